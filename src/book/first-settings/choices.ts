// no-unit-test: words, and the papers of print/; test/book/first-settings/text.test.ts goes through every one
import { lights, papers, papersFor, processes } from '../../print';
import type { FirstChoices } from '../../shared/first-settings';
import type { LightId, PaperId, ProcessId } from '../../shared/target';

/** What each process is, for somebody who knows the product and not the press. Common practice, no source. */
const sentences: Record<ProcessId, string> = {
  'silver-halide': 'Photographic paper, exposed and developed: albums with thick pages that lie flat.',
  'liquid-toner': 'A digital press whose toner swims in a liquid: many printed books in small numbers.',
  'dry-toner': 'A digital press with powder toner: print on demand, single copies.',
  inkjet: 'Ink in fine drops: single copies on fine papers, and fast presses for books.',
  'dye-transfer': 'Dyes that heat moves from a ribbon onto photographic paper: small albums.',
  'offset-coated': 'Plates and ink on coated paper: a run of some hundred copies or more.',
  'offset-uncoated': 'Plates and ink on uncoated paper: the blacks are weaker than on coated paper.',
};

const brightened: Record<string, string> = {
  none: 'No brightener: it looks alike under most lights.',
  faint: 'Faintly brightened.',
  low: 'Little brightener.',
  moderate: 'Brightened: bluer in daylight than under lamps.',
  high: 'Strongly brightened: clearly bluer in daylight than under lamps.',
};

/** Where a light is met. D50 first: what the settings mean where they name none. */
const met: [LightId, string][] = [
  ['D50', 'How prints are judged in the trade. Take it where you do not know.'],
  ['D65', 'Beside a window that the sun does not reach.'],
  ['LED-B1', 'A warm white lamp at home.'],
  ['LED-B2', 'A warm white lamp, a little cooler.'],
  ['LED-B3', 'Neutral white: offices and shops.'],
  ['LED-B4', 'Daylight white.'],
  ['LED-B5', 'Cool daylight white.'],
  ['A', 'A bulb with a filament, or a halogen lamp.'],
  ['FL11', 'The usual tube of offices and shops.'],
  ['FL2', 'An older, cool white tube.'],
];

/** What a person may choose from for the first settings of a book. */
export function firstChoices(): FirstChoices {
  return {
    processes: processes.map(({ id, name }) => ({
      ...{ id, name, detail: sentences[id] },
      papers: papersFor(id).map(paperChoice),
    })),
    lights: met.map(([id, detail]) => ({ id, name: lights.find(light => light.id === id)!.name, detail })),
  };
}

function paperChoice(id: PaperId): { id: PaperId; name: string; detail: string } {
  const { name, brightener } = papers.find(paper => paper.id === id)!;
  return { id, name, detail: brightened[brightener] };
}
