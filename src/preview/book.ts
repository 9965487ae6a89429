// no-unit-test: it lives in a webview; test/e2e/suites/overview tests it there
import './words';
import { t } from '@vscode/l10n';
import { html } from '../report/page/html';
import type { FacetId, Overview, OverviewPicture, ToBookPage } from '../shared/overview';
import { Choice } from './book-choice';
import { Contacts } from './book-contacts';
import { asDrawn, bookPage, table } from './book-page';
import { type BookState, keyOf, passes, post, remember, state } from './book-state';

const page = document.querySelector<HTMLElement>('main')!;
const contacts = new Contacts();
let book: Overview | undefined;
let choice: Choice | undefined;

const find = (id: string) => document.getElementById(id)!;
const pictureOf = ({ dataset }: HTMLElement): OverviewPicture => book!.pictures[Number(dataset.at)];
const options = () => page.querySelectorAll<HTMLElement>('[role="option"]');

function show({ root, folder, overview }: Extract<ToBookPage, { type: 'overview' }>) {
  const focused = document.activeElement;
  const wasInList = focused?.closest('#contacts') != null;
  const scroll = book ? window.scrollY : state.scroll;
  remember({ root });
  book = overview;
  page.innerHTML = bookPage(folder, overview, state).text;
  page.removeAttribute('aria-busy');
  choice = new Choice(find('contacts'), tellChoice, element =>
    post({ type: 'open', path: pictureOf(element).path }),
  );
  const chosen = new Set(state.chosen);
  choice.begin(
    element => chosen.has(keyOf(pictureOf(element))),
    element => keyOf(pictureOf(element)) === state.at,
  );
  forgetWhatIsGone(overview);
  filter();
  draw();
  contacts.begin(options(), overview.pictures);
  window.scrollTo(0, scroll);
  if (wasInList) choice.at?.focus({ preventScroll: true });
  else if (focused?.id) document.getElementById(focused.id)?.focus({ preventScroll: true });
}

/** A filter on what no picture has any more would show nothing, and be seen nowhere. */
function forgetWhatIsGone({ facets }: Overview) {
  const kept = Object.entries(state.filter).filter(([id, value]) =>
    facets.find(facet => facet.id === id)?.values.some(each => each.id === value),
  );
  remember({ filter: Object.fromEntries(kept) });
}

/** Shows what passes the filter, and which filter that is. */
function filter() {
  for (const element of options()) element.hidden = !passes(pictureOf(element), state.filter);
  for (const facing of page.querySelectorAll<HTMLElement>('.opening'))
    facing.hidden = !facing.querySelector('[role="option"]:not([hidden])');
  for (const button of page.querySelectorAll<HTMLElement>('[data-facet]')) {
    const { facet, value } = button.dataset;
    button.setAttribute('aria-pressed', String(state.filter[facet as FacetId] === value));
  }
  choice!.settle();
  tellChoice();
  fillTable();
}

function toggle(facet: FacetId, value: string) {
  const { [facet]: before, ...others } = state.filter;
  remember({ filter: before === value ? others : { ...others, [facet]: value } });
  filter();
}

function tellChoice() {
  const { chosen, at } = choice!;
  const keys = chosen.map(element => keyOf(pictureOf(element)));
  remember({ chosen: keys, at: at ? keyOf(pictureOf(at)) : null });
  const all = book!.pictures.length;
  const shown = [...options()].filter(({ hidden }) => !hidden).length;
  find('count').textContent = countSays(all, shown, keys.length);
  find('all').hidden = shown === all;
  (find('convert') as HTMLButtonElement).disabled = keys.length === 0;
}

function countSays(all: number, shown: number, chosen: number): string {
  if (all === 1) {
    if (shown === 0) return t('0 of 1 picture shown.');
    return chosen === 0 ? t('1 picture.') : t('1 picture; 1 chosen.');
  }
  if (shown === all)
    return chosen === 0 ? t('{0} pictures.', all) : t('{0} pictures; {1} chosen.', all, chosen);
  return chosen === 0
    ? t('{0} of {1} pictures shown.', shown, all)
    : t('{0} of {1} pictures shown; {2} chosen.', shown, all, chosen);
}

function fillTable() {
  const details = find('table') as HTMLDetailsElement;
  const shown = book!.spreads.flat().map(i => book!.pictures[i]);
  details.querySelector('div')!.innerHTML = details.open
    ? table(shown.filter(picture => passes(picture, state.filter))).text
    : '';
}

function draw() {
  find('contacts').dataset.drawn = state.drawn;
  find('as-drawn').textContent = asDrawn(state.drawn);
}

function empty({ words, action }: Extract<ToBookPage, { type: 'empty' }>) {
  book = undefined;
  page.removeAttribute('aria-busy');
  page.innerHTML =
    html`<p class="empty" role="status">${words}</p>${action && html`<p><button type="button" class="primary" data-act="${action.id}">${action.words}</button></p>`}`.text;
}

window.addEventListener('message', ({ data }: MessageEvent<ToBookPage>) => {
  switch (data.type) {
    case 'overview':
      return show(data);
    case 'empty':
      return empty(data);
    case 'contacts':
      return contacts.receive(data.contacts);
    case 'busy':
    case 'told':
      if (book) find('busy').textContent = data.words;
  }
});

page.addEventListener('click', ({ target }) => {
  const button = target instanceof Element && target.closest('button');
  if (!button) return;
  const { facet, value, rule, act } = button.dataset;
  if (facet) toggle(facet as FacetId, value!);
  if (rule) post({ type: 'explain', rule });
  if (act) post({ type: 'act', action: act as 'check' | 'settings' });
  switch (button.id) {
    case 'choose':
      return choice!.chooseAll();
    case 'choose-convert':
      return choice!.chooseAll(each => {
        const { kind, places } = pictureOf(each).advice;
        return kind === 'convert' || places === true;
      });
    case 'convert':
      return post({ type: 'convert', paths: [...new Set(choice!.chosen.map(each => pictureOf(each).path))] });
    case 'export':
      return post({ type: 'export' });
    case 'all':
      remember({ filter: {} });
      return filter();
  }
});

page.addEventListener('change', ({ target }) => {
  if (!(target instanceof HTMLInputElement) || target.name !== 'drawn') return;
  remember({ drawn: target.value as BookState['drawn'] });
  draw();
});

// `toggle` does not bubble
page.addEventListener(
  'toggle',
  ({ target }) => {
    if (!(target instanceof HTMLDetailsElement)) return;
    if (target.id === 'whole') remember({ whole: target.open });
    if (target.id === 'table') fillTable();
  },
  true,
);

window.addEventListener('scroll', () => book && remember({ scroll: window.scrollY }), { passive: true });

post({ type: 'ready' });
