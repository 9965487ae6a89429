// no-unit-test: it lives in a webview; test/e2e/suites/review tests it there
import './words';
import { t } from '@vscode/l10n';
import { html } from '../report/page/html';
import type {
  FromReviewPage,
  Review,
  ReviewedPicture,
  ReviewWish,
  Since,
  ToReviewPage,
} from '../shared/review';
import type { View } from './comparison';
import { listPage, picturePage } from './review-page';
import { ReviewPictures } from './review-pictures';

interface State {
  /** Which book it shows, and what of it; null: not told yet. */
  root: string | null;
  wish: ReviewWish | null;
  view: View;
  scroll: number;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromReviewPage): void;
  getState(): State | undefined;
  setState(state: State): void;
};

const editor = acquireVsCodeApi();
const post = (message: FromReviewPage) => editor.postMessage(message);
const state: State = editor.getState() ?? {
  ...{ root: null, wish: null, scroll: 0 },
  view: { view: 'wipe', zoom: 1, wipe: 50 },
};
const page = document.querySelector<HTMLElement>('main')!;
const pictures = new ReviewPictures(wipe => remember({ view: { ...state.view, wipe } }));
/** What is drawn now; empty: nothing yet. */
let drawn = '';

function remember(change: Partial<State>) {
  Object.assign(state, change);
  editor.setState(state);
}

function show({ root, wish, review, picture }: Extract<ToReviewPage, { type: 'review' }>) {
  const { since } = wish;
  const now = JSON.stringify([since, picture?.path, picture?.page]);
  const again = now === drawn;
  const scroll = again ? window.scrollY : drawn === '' ? state.scroll : 0;
  const focused = document.activeElement?.id;
  drawn = now;
  remember({
    root,
    wish: { since, picture: picture && { path: picture.path, page: picture.page } },
  });
  draw(review, since, picture, wish.picture?.path);
  page.removeAttribute('aria-busy');
  window.scrollTo(0, scroll);
  const place = focused && document.getElementById(focused);
  if (place) place.focus({ preventScroll: true });
  else if (!again) page.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
}

function draw(review: Review, since: Since, picture: ReviewedPicture | null, asked: string | undefined) {
  if (picture) {
    page.innerHTML = picturePage(picture, review, state.view).text;
    pictures.begin(page, picture, state.view);
  } else {
    const told = asked ? t('{0} is as it was: nothing of it is to be compared.', asked) : '';
    page.innerHTML = listPage(review, since, told).text;
  }
  page.querySelector('h1')!.tabIndex = -1;
}

function empty(words: string) {
  page.innerHTML =
    html`<p class="empty" role="status">${words}</p><p><button type="button" class="plain" id="again">${t('Compare again')}</button></p>`.text;
  page.removeAttribute('aria-busy');
  drawn = '';
}

/** What is shown stays while it is compared again. */
function busy(words: string) {
  page.setAttribute('aria-busy', 'true');
  if (drawn === '') page.innerHTML = '<p class="empty" role="status"></p>';
  const place = page.querySelector('.empty');
  if (place) place.textContent = words;
}

window.addEventListener('message', ({ data }: MessageEvent<ToReviewPage>) => {
  switch (data.type) {
    case 'review':
      return show(data);
    case 'empty':
      return empty(data.words);
    case 'busy':
      return busy(data.words);
    case 'raster':
      return void pictures.show(data);
    case 'no-raster':
      return pictures.say(data.of, data.message);
  }
});

page.addEventListener('click', ({ target }) => {
  const button = target instanceof Element ? target.closest('button') : null;
  if (!button) return;
  const { rule, path, open } = button.dataset;
  if (rule) post({ type: 'explain', rule });
  else if (open) post({ type: 'open', path: open });
  else if (path) choose({ path, page: null });
  else if (button.id === 'list') choose(null);
  else if (button.id === 'again') post({ type: 'again' });
});

page.addEventListener('change', ({ target }) => {
  if (target instanceof HTMLSelectElement && state.wish?.picture)
    choose({ path: state.wish.picture.path, page: Number(target.value) });
  if (!(target instanceof HTMLInputElement)) return;
  if (target.name === 'view') remember({ view: { ...state.view, view: target.value as View['view'] } });
  if (target.name === 'zoom') remember({ view: { ...state.view, zoom: Number(target.value) } });
  pictures.set(state.view);
});

function choose(picture: ReviewWish['picture']) {
  if (state.wish) remember({ wish: { ...state.wish, picture } });
  post({ type: 'choose', picture });
}

window.addEventListener('scroll', () => remember({ scroll: window.scrollY }), { passive: true });

post({ type: 'ready' });
