// no-unit-test: it lives in a webview; test/e2e/suites/overview tests it there
import type { FacetId, FromBookPage, OverviewPicture, PictureKey } from '../shared/overview';

/** What the page remembers while it is hidden, and when the window is opened again. */
export interface BookState {
  /** Which book it shows; null: not told yet. */
  root: string | null;
  /** What is shown only, one value a facet. */
  filter: Partial<Record<FacetId, string>>;
  drawn: '0' | '1' | '2' | 'files';
  /** Keys of pictures that are chosen. */
  chosen: string[];
  /** Key of the picture where the keyboard is. */
  at: string | null;
  scroll: number;
  /** Whether what is said of the whole book is unfolded. */
  whole: boolean;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromBookPage): void;
  getState(): BookState | undefined;
  setState(state: BookState): void;
};

const editor = acquireVsCodeApi();

export const state: BookState = editor.getState() ?? {
  root: null,
  filter: {},
  drawn: '0',
  chosen: [],
  at: null,
  scroll: 0,
  whole: false,
};

export function remember(change: Partial<BookState>) {
  Object.assign(state, change);
  editor.setState(state);
}

export const post = (message: FromBookPage) => editor.postMessage(message);

/** A page of a picture as a word. */
export const keyOf = ({ path, page }: PictureKey): string => `${page} ${path}`;

/** Whether it has every value that is asked for. */
export const passes = ({ has }: OverviewPicture, filter: BookState['filter']): boolean =>
  Object.entries(filter).every(([facet, value]) => has[facet as FacetId].includes(value));
