import { facing } from '../../book/order';
import type { BookReport } from '../../shared/finding';
import type { Sheet } from '../../shared/sheet';
import { CONTACT_DRAWS, contactDrawings } from '../sheet/contact';
import type { Drawing } from '../sheet/drawn';
import { outlierWords } from '../sheet/outlier';
import { drawingFilter } from './drawing-filter';
import { type Html, html } from './html';
import { type Image, image } from './image';
import { mark } from './marks';
import { choice } from './orders';
import { lightGreys } from './strip';

/** A picture among the others: how it is shown, and where its sheet is, if it has one. */
export interface Contact {
  sheet: Sheet;
  small: Image | null;
  /** Why a picture that can be read is not shown; else null. */
  notShown: string | null;
  /** Id of its sheet on this page. */
  id: string | null;
}

/**
 * All pictures on one screen, drawn as one possible order: the same draw for all, so that one which will stand out does,
 * and marked as such, since no one knows which order it will be; those that the rules find to stand out say so in words. Filters draw it, chosen by radio buttons: no script.
 */
export function contacts(
  { pictures, findings, spreads = [] }: BookReport,
  entries: readonly Contact[],
  id: string,
): Html {
  const drawings = pictures.map((picture, i) => {
    const { sheet, small } = entries[i];
    return small && contactDrawings(picture, sheet.advice);
  });
  const drawn = drawings.some(Boolean);
  const place = (i: number) =>
    contact(entries[i], drawings[i] ? i : null, outlierWords(pictures[i], findings));
  const name = (i: number) => nameOf(entries[i].sheet);
  return html`
<nav class="contacts" id="${id}" aria-label="All pictures">
  ${drawn && choice('contacts', 'Drawn as', ways)}
  ${drawn && html`<p class="as-drawn"><strong>One possible order, the same for all pictures: not the colours that they will have.</strong> A picture without a forecast is shown as its file. ${BELOW}</p>`}
  <p${drawn && html` class="as-files"`}>The files, as a screen shows them. ${drawn && BELOW}</p>
  ${drawn && filters(drawings, entries)}
  <ol>${facing(pictures, spreads).map(pages => (pages.length > 1 ? opening(pages.map(place), pages.map(name)) : place(pages[0])))}</ol>
</nav>`;
}

/** What faces each other in one frame; `names` for who does not see it. */
const opening = (places: readonly Html[], names: readonly string[]): Html => html`
<li class="opening" style="--pages:${places.length}"><ol aria-label="Facing: ${names.join(', ')}">${places}</ol></li>`;

const BELOW = 'Below each picture: one light grey of it in ten possible orders.';

const ways = [
  ...['one possible order', 'another', 'a third'].map((words, i) => ({
    id: `contacts-${i}`,
    value: i,
    words,
    checked: i === 0,
  })),
  { id: 'contacts-files', value: 'files', words: 'the files', checked: false },
];

const filterId = (index: number, order: number) => `drawn-${index + 1}-${order}`;

function filters(drawings: readonly (Drawing[] | null)[], entries: readonly Contact[]): Html {
  const all = drawings.map((orders, i) =>
    orders?.map((drawing, order) => drawingFilter(drawing, filterId(i, order), entries[i].sheet.encoding.id)),
  );
  return html`<svg class="filters" width="0" height="0" aria-hidden="true">${all.flatMap(some => some ?? [])}</svg>`;
}

export const nameOf = ({ path, page }: Sheet): string => (page > 1 ? `${path} (page ${page})` : path);

/** `outlier`: why it is likely to be seen among the others; null where it is not. */
function contact(
  { sheet, small, notShown, id }: Contact,
  drawn: number | null,
  outlier: string | null,
): Html {
  const { advice, conditions, encoding } = sheet;
  const style =
    drawn === null ? '' : CONTACT_DRAWS.map((_, i) => `--drawn-${i}:url(#${filterId(drawn, i)})`).join(';');
  const inside = html`
    <span class="frame">${small ? image(small, '', style) : notShown ? html`<small>${notShown}</small>` : mark('mend')}</span>
    ${advice.kind !== 'leave' && conditions.length > 0 && lightGreys(conditions[0].orders)}
    <span class="what">${asked(advice)}${outlier && html`<b class="tag">${mark('outlier')}${outlier}</b>`}<span>${nameOf(sheet)}<small>${encoding.id}: ${advice.title}</small></span></span>`;
  return html`<li>${id ? html`<a href="#${id}">${inside}</a>` : html`<div>${inside}</div>`}</li>`;
}

/** What a picture asks for, in a word or two; nothing where it asks for nothing. */
const asked = ({ kind, tag }: Sheet['advice']): Html | false =>
  kind !== 'send' && kind !== 'leave' && html`<b class="tag">${mark(kind)}${tag}</b>`;
