// no-unit-test: part of the tests
import { agentName, parametersText, sourceName } from '../../../src/picture/xmp/record';
import type { Remedied } from '../../../src/shared/remedy';

export const REMEDIED: Remedied = { from: 'ab'.repeat(32), to: 'rgb-toned', toned: true, fitted: false };

/** A packet with the record of a remedy. */
export const RECORD = `<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:m="http://ns.adobe.com/xap/1.0/mm/" xmlns:r="http://ns.adobe.com/xap/1.0/sType/ResourceRef#" xmlns:e="http://ns.adobe.com/xap/1.0/sType/ResourceEvent#"><m:DerivedFrom r:instanceID="${sourceName(REMEDIED.from)}"/><m:History><rdf:Seq><rdf:li e:action="converted" e:softwareAgent="${agentName('1.0')}" e:parameters="${parametersText(REMEDIED, 'words')}"/></rdf:Seq></m:History></rdf:Description></rdf:RDF>`;
