import { version } from '../../../package.json';
import { parsePacket } from '../../picture/xmp/packet';
import type { Remedied } from '../../shared/remedy';
import type { Carried } from './carried';
import { record as recorded } from './xmp/history';
import { emptyPacket, packetText } from './xmp/properties';

/**
 * The same with the record of a remedy in its XMP.
 * @param record what was made of which picture; `parameters`: how, in words, with `FITTED` among them where there was a curve
 */
export function withRecord(
  carried: Carried,
  { parameters, ...record }: Omit<Remedied, 'fitted'> & { parameters: string },
): Carried {
  const packet = (carried.xmp !== null && parsePacket(Buffer.from(carried.xmp))) || emptyPacket();
  recorded(packet, record, parameters, version);
  return { ...carried, xmp: packetText(packet) };
}
