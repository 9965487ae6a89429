// no-unit-test: it lives in a webview; test/e2e/suites/book/preview.test.ts tests it there
import './words';
import type { Shown } from '../report/page/orders';
import type { FromPage, PreviewWish, ToPage } from '../shared/preview-protocol';
import type { Sheet } from '../shared/sheet';
import { Crops, type CropsState, cropsBegin } from './crops';
import { drawSheet } from './draw';
import { FacingPages, type FacingState, facingBegin } from './facing';
import { Plate, type PlateState, plateBegin } from './plate';
import { Remedy, type RemedyState, remedyBegin } from './remedy';

interface State extends PreviewWish, Shown {
  scroll: number;
  remedy: RemedyState;
  plate: PlateState;
  crops: CropsState;
  facing: FacingState;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): State | undefined;
  setState(state: State): void;
};

const editor = acquireVsCodeApi();
const state: State = {
  page: 1,
  light: null,
  series: 0,
  order: 0,
  seen: 'alone',
  scroll: 0,
  remedy: { ...remedyBegin },
  plate: { ...plateBegin },
  crops: { ...cropsBegin },
  facing: { ...facingBegin },
  ...editor.getState(),
};
const plate = new Plate(
  state.plate,
  change => remember({ plate: Object.assign(state.plate, change) }),
  message => editor.postMessage(message),
);
const remedy = new Remedy(
  state.remedy,
  change => remember({ remedy: Object.assign(state.remedy, change) }),
  message => editor.postMessage(message),
);
const crops = new Crops(
  state.crops,
  change => remember({ crops: Object.assign(state.crops, change) }),
  plate,
);
const facing = new FacingPages(
  state.facing,
  change => remember({ facing: Object.assign(state.facing, change) }),
  message => editor.postMessage(message),
);
let sheet: Sheet | undefined;
const page = document.querySelector<HTMLElement>('main')!;

function remember(change: Partial<State>) {
  Object.assign(state, change);
  editor.setState(state);
}

const wished = (): PreviewWish => ({ page: state.page, light: state.light, series: state.series });

function wish(change: Partial<PreviewWish>) {
  remember(change);
  page.setAttribute('aria-busy', 'true');
  editor.postMessage({ type: 'wish', ...wished() });
}

function show(next: Sheet) {
  const first = !page.hasChildNodes();
  sheet = next;
  drawSheet(
    page,
    sheet,
    { plate: plate.element, remedy: remedy.element, crops: crops.element, facing: facing.element },
    state,
  );
  crops.about(sheet, state);
  plate.about(sheet);
  facing.about(sheet);
  page.removeAttribute('aria-busy');
  if (first) window.scrollTo(0, state.scroll);
}

window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  switch (data.type) {
    case 'sheet':
      return show(data.sheet);
    case 'remedies':
      return sheet && remedy.offer(data.remedies, sheet, data.writable);
    case 'candidate':
    case 'no-candidate':
    case 'methods':
    case 'no-methods':
    case 'converted':
      return remedy.receive(data);
    case 'detail':
    case 'pixel':
    case 'marks':
    case 'no-look':
    case 'screen':
      return plate.receive(data);
    case 'facing':
      return facing.show(data.facing);
    case 'raster':
      void remedy.before(data.png);
      return void plate.show(data);
    case 'no-raster':
      return plate.lose(data.message);
    case 'trouble':
      page.removeAttribute('aria-busy');
      return plate.lose(data.message);
  }
});

page.addEventListener('change', ({ target }) => {
  if (target instanceof HTMLInputElement && target.name === 'order')
    remember({ order: Number(target.value) });
  if (target instanceof HTMLInputElement && target.name === 'seen')
    remember({ seen: target.value as State['seen'] });
  if (sheet && target instanceof HTMLInputElement) crops.about(sheet, state);
  if (target instanceof HTMLSelectElement && target.id === 'light')
    wish({ light: (target.value || null) as State['light'] });
  if (target instanceof HTMLSelectElement && target.id === 'page') wish({ page: Number(target.value) });
});

page.addEventListener('click', ({ target }) => {
  const button = target instanceof Element && target.closest('button');
  if (!button) return;
  if (button.dataset.rule) editor.postMessage({ type: 'explain', rule: button.dataset.rule });
  if (button.dataset.open) editor.postMessage({ type: 'open', path: button.dataset.open });
  if (button.id === 'lead') remedy.lead();
  if (button.id === 'place') editor.postMessage({ type: 'place' });
  if (button.id === 'others') wish({ series: state.series + 1 });
});

window.addEventListener('scroll', () => remember({ scroll: window.scrollY }), { passive: true });

editor.postMessage({ type: 'ready', ...wished() });
