import assert from 'node:assert/strict';
import { parametersText, recordIn, sourceName } from '../../../src/picture/xmp/record';

const FROM = '0123456789abcdef'.repeat(4);
const head =
  'xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/" xmlns:stRef="http://ns.adobe.com/xap/1.0/sType/ResourceRef#" xmlns:stEvt="http://ns.adobe.com/xap/1.0/sType/ResourceEvent#"';
const packet = (derived: string, ...events: string[]) =>
  Buffer.from(
    `<rdf:RDF ${head}><rdf:Description>${derived}<xmpMM:History><rdf:Seq>${events.join('')}</rdf:Seq></xmpMM:History></rdf:Description></rdf:RDF>`,
  );
const DERIVED = `<xmpMM:DerivedFrom rdf:parseType="Resource"><stRef:instanceID>${sourceName(FROM)}</stRef:instanceID></xmpMM:DerivedFrom>`;
const event = (parameters: string, { agent = 'evengrey 1.0', action = 'converted' } = {}) =>
  `<rdf:li stEvt:action="${action}" stEvt:softwareAgent="${agent}" stEvt:parameters="${parameters}"/>`;

describe('recordIn', () => {
  it('reads the record in every form that RDF allows', () => {
    const forms = {
      'attributes of the structure': [
        `<xmpMM:DerivedFrom stRef:instanceID="${sourceName(FROM)}"/>`,
        event('to rgb-neutral; words'),
      ],
      elements: [
        DERIVED,
        '<rdf:li rdf:parseType="Resource"><stEvt:action>converted</stEvt:action><stEvt:softwareAgent>evengrey 1.0</stEvt:softwareAgent><stEvt:parameters>to rgb-neutral; words</stEvt:parameters></rdf:li>',
      ],
      'a nested description': [
        `<xmpMM:DerivedFrom><rdf:Description stRef:instanceID="${sourceName(FROM)}"/></xmpMM:DerivedFrom>`,
        '<rdf:li><rdf:Description stEvt:action="converted" stEvt:softwareAgent="evengrey 1.0"><stEvt:parameters>to rgb-neutral; words</stEvt:parameters></rdf:Description></rdf:li>',
      ],
    };
    for (const [name, [derived, done]] of Object.entries(forms))
      assert.deepEqual(
        recordIn(packet(derived, done)),
        { from: FROM, to: 'rgb-neutral', toned: false, fitted: false },
        name,
      );
  });

  it('reads what is written, toned or not', () => {
    for (const to of ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned'] as const)
      for (const toned of [false, true]) {
        const parameters = parametersText({ to, toned }, 'words; more');
        assert.deepEqual(recordIn(packet(DERIVED, event(parameters))), {
          from: FROM,
          to,
          toned,
          fitted: false,
        });
      }
  });

  it('tells a tint that answers that of prints from one that is meant by itself', () => {
    const counter = parametersText({ to: 'rgb-toned', toned: true, counter: true }, 'words');
    assert.deepEqual(recordIn(packet(DERIVED, event(counter))), {
      from: FROM,
      to: 'rgb-toned',
      toned: true,
      counter: true,
      fitted: false,
    });
    const meant = parametersText({ to: 'rgb-toned', toned: true }, 'words');
    assert.equal(recordIn(packet(DERIVED, event(meant)))?.counter, undefined);
  });

  it('knows a fit among the words, also of a conversion before the last, and of no other program', () => {
    const fit = 'to rgb-neutral; R = G = B, 8 bits; tones fitted by a curve; more';
    const fitted = (...events: string[]) => recordIn(packet(DERIVED, ...events))?.fitted;
    assert.equal(fitted(event(fit)), true);
    assert.equal(fitted(event(fit), event('to black-only; words')), true);
    assert.equal(fitted(event('to rgb-neutral; words')), false);
    assert.equal(fitted(event('to rgb-neutral; words'), event(fit, { agent: 'Paint' })), false);
  });

  it('takes the last conversion of several, whatever others did since', () => {
    const found = recordIn(
      packet(
        DERIVED,
        event('to rgb-toned, tint intended; words'),
        event('to black-only; words'),
        event('to image/jpeg', { agent: 'Paint' }),
      ),
    );
    assert.deepEqual(found, { from: FROM, to: 'black-only', toned: false, fitted: false });
  });

  it('says nothing of files that other programs made', () => {
    const others = [
      packet('', event('to rgb-neutral; words')),
      packet(DERIVED, event('to rgb-neutral; words', { agent: 'Paint evengrey' })),
      packet(DERIVED, event('to rgb-neutral; words', { action: 'saved' })),
      packet(DERIVED, event('to something; words')),
      packet(DERIVED.replace(FROM, FROM.slice(1)), event('to rgb-neutral; words')),
      Buffer.from(`nih:sha-256;${FROM} evengrey no packet at all`),
      Buffer.alloc(0),
    ];
    for (const bytes of others) assert.equal(recordIn(bytes), null, bytes.toString());
  });
});
