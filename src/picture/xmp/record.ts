import type { Element } from '@xmldom/xmldom';
import type { Remedied, RemedyEncoding } from '../../shared/remedy';
import { descriptions, elementsOf, Ns, type Packet, parsePacket } from './packet';

// The record of a remedy, by open schemas only (ISO 16684-1, XMP part 2 section 1.2.2): xmpMM:DerivedFrom names the
// source by its hash (RFC 6920, the `nih` form), xmpMM:History tells what was done.

const AGENT = 'evengrey';
export const ACTION = 'converted';
const TONED = ', tint intended';
const COUNTER = ', counter-tint intended';
/** Among the words of a remedy that had a curve. */
export const FITTED = 'tones fitted by a curve';

/** How a source is named. @param sha256 hex */
export const sourceName = (sha256: string): string => `nih:sha-256;${sha256}`;
const SOURCE_NAME = /^nih:sha-256;([0-9a-f]{64})(?:;[0-9a-f])?$/;

/** `stEvt:softwareAgent`. */
export const agentName = (version: string): string => `${AGENT} ${version}`;

/** `stEvt:parameters`: words for people that begin with what `recordIn` reads. */
export const parametersText = (
  { to, toned, counter }: Pick<Remedied, 'to' | 'toned' | 'counter'>,
  words: string,
): string => `to ${to}${counter ? COUNTER : toned ? TONED : ''}; ${words}`;
const PARAMETERS =
  /^to (rgb-neutral|single-channel|black-only|rgb-toned)(, (?:counter-)?tint intended)?(?:;|$)/;

/**
 * What a file's XMP says of the remedy that made it; null where it says nothing of the kind. Also where another program
 * has written the packet again since.
 */
export function recordIn(bytes: Buffer): Remedied | null {
  // nearly every packet is another program's, and need not be parsed
  if (!bytes.includes('nih:sha-256;') || !bytes.includes(AGENT)) return null;
  const packet = parsePacket(bytes);
  return packet && recordOf(packet);
}

function recordOf(packet: Packet): Remedied | null {
  const property = (name: string) =>
    descriptions(packet)
      .flatMap(elementsOf)
      .find(el => el.namespaceURI === Ns.xmpMM && el.localName === name);
  const [derived, history] = [property('DerivedFrom'), property('History')];
  const from = derived && SOURCE_NAME.exec(field(derived, Ns.ref, 'instanceID') ?? '')?.[1];
  if (!from || !history) return null;
  const said = elementsOf(history)
    .flatMap(elementsOf)
    .filter(event => field(event, Ns.event, 'softwareAgent')?.startsWith(`${AGENT} `))
    .filter(event => field(event, Ns.event, 'action') === ACTION)
    .map(event => field(event, Ns.event, 'parameters') ?? '');
  const last = said.map(text => PARAMETERS.exec(text)).findLast(found => found !== null);
  if (!last) return null;
  const fitted = said.some(text => text.split('; ').includes(FITTED));
  return {
    from,
    to: last[1] as RemedyEncoding,
    toned: last[2] !== undefined,
    ...(last[2] === COUNTER && { counter: true }),
    fitted,
  };
}

/**
 * A field of a structure in any of the forms that RDF allows: an attribute, a child, or either of a nested
 * `rdf:Description`.
 */
function field(structure: Element, namespace: string, name: string): string | null {
  const holders = [structure, ...elementsOf(structure).filter(el => el.namespaceURI === Ns.rdf)];
  for (const holder of holders) {
    if (holder.hasAttributeNS(namespace, name)) return holder.getAttributeNS(namespace, name);
    const child = elementsOf(holder).find(el => el.namespaceURI === namespace && el.localName === name);
    if (child) return child.textContent;
  }
  return null;
}
