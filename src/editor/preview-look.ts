// no-unit-test: it lives in VS Code; test/e2e/suites/screen tests it there
import type { FromPage, ToPage } from '../shared/preview-protocol';
import { Cancelled, type CheckerClient } from './checker-client';

/** What is marked is drawn over the picture as it is shown: no finer than that. */
const MARKS_EDGE = 1600;

type Question = Extract<FromPage, { type: 'detail' | 'pixel' | 'marks' }>;

/** Answers a person who looks closely at a picture; of each kind of question only the last is answered. */
export class Looking {
  readonly #running = new Map<Question['type'], AbortController>();

  constructor(
    private readonly checker: CheckerClient,
    private readonly file: string,
    private readonly post: (message: ToPage) => void,
  ) {}

  async at(page: number, question: Question) {
    this.#running.get(question.type)?.abort();
    const cancel = new AbortController();
    this.#running.set(question.type, cancel);
    try {
      this.post(await this.#answer(page, question, cancel.signal));
    } catch (error) {
      if (!(error instanceof Cancelled)) this.post({ type: 'no-look', message: (error as Error).message });
    }
  }

  dispose() {
    for (const cancel of this.#running.values()) cancel.abort();
  }

  async #answer(page: number, question: Question, signal: AbortSignal): Promise<ToPage> {
    const { file } = this;
    switch (question.type) {
      case 'detail': {
        const { box, longEdge } = question;
        const detail = await this.checker.ask('detail', { file, page, box, longEdge }, { signal });
        // a buffer of its own: what came by a pipe shares one
        return { type: 'detail', detail: { ...detail, png: new Uint8Array(detail.png) } };
      }
      case 'pixel': {
        const { x, y } = question;
        return { type: 'pixel', pixel: await this.checker.ask('pixel', { file, page, x, y }, { signal }) };
      }
      case 'marks': {
        const marks = await this.checker.ask('marks', { file, page, longEdge: MARKS_EDGE }, { signal });
        const { lightness, kinds, ink } = marks;
        return {
          type: 'marks',
          marks: {
            ...marks,
            lightness: new Uint16Array(lightness),
            kinds: new Uint8Array(kinds),
            ink: ink && new Uint16Array(ink),
          },
        };
      }
    }
  }
}
