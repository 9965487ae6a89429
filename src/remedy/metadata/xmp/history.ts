import type { Element } from '@xmldom/xmldom';
import { elementsOf, Ns, type Packet } from '../../../picture/xmp/packet';
import { ACTION, agentName, parametersText, sourceName } from '../../../picture/xmp/record';
import type { Remedied } from '../../../shared/remedy';
import { elementOf, home, make, type Property, remove, structure, textOf } from './properties';

const DERIVED: Property = [Ns.xmpMM, 'DerivedFrom'];
const HISTORY: Property = [Ns.xmpMM, 'History'];

/**
 * Names the source and adds to the history what was done (ISO 16684-1, section 8.7; XMP part 2, section 1.2.2): no
 * time, so that the same conversion gives the same file.
 * @param words how, for people
 */
export function record(
  packet: Packet,
  remedied: Omit<Remedied, 'fitted'>,
  words: string,
  version: string,
): void {
  const documentID = textOf(packet, [Ns.xmpMM, 'DocumentID']);
  remove(packet, DERIVED);
  const derived = make(packet, ...DERIVED);
  home(packet).appendChild(
    structure(packet, derived, Ns.ref, { instanceID: sourceName(remedied.from), documentID }),
  );
  events(packet).appendChild(
    structure(packet, make(packet, Ns.rdf, 'li'), Ns.event, {
      action: ACTION,
      parameters: parametersText(remedied, words),
      softwareAgent: agentName(version),
    }),
  );
}

/** The list of events, which is an ordered array; made where there is none. */
function events(packet: Packet): Element {
  const known = elementOf(packet, HISTORY);
  const list = known && elementsOf(known).find(el => el.namespaceURI === Ns.rdf && el.localName === 'Seq');
  if (list) return list;
  remove(packet, HISTORY);
  const history = make(packet, ...HISTORY);
  home(packet).appendChild(history);
  return history.appendChild(make(packet, Ns.rdf, 'Seq')) as Element;
}
