/** Where progress is shown: a terminal, or nothing at all. */
export interface Terminal {
  isTTY?: boolean;
  columns?: number;
  write(text: string): unknown;
}

const BETWEEN_MS = 100;
const BAR = 24;

/** One line that is written over again and again while pictures are read. Nothing where there is no terminal. */
export class Progress {
  private last = 0;
  private shown = false;

  constructor(
    private readonly terminal: Terminal,
    private readonly now: () => number = Date.now,
  ) {
    this.last = now();
  }

  tell(done: number, total: number, path: string): void {
    if (!this.terminal.isTTY || this.now() - this.last < BETWEEN_MS) return;
    this.last = this.now();
    this.shown = true;
    const filled = Math.round((done / total) * BAR);
    const head = `${'█'.repeat(filled)}${'░'.repeat(BAR - filled)} ${done} of ${total}  `;
    const room = Math.max(0, (this.terminal.columns || 80) - head.length - 1);
    const name = path.length > room ? `…${path.slice(path.length - room + 1)}` : path;
    this.terminal.write(`\r\u001b[K${head}${room > 1 ? printable(name) : ''}`);
  }

  /** Takes the line away. */
  end(): void {
    if (this.shown) this.terminal.write('\r\u001b[K');
    this.shown = false;
  }
}

/** A file's name must not steer the terminal. */
const printable = (text: string) => text.replace(/\p{Cc}/gu, '?');
