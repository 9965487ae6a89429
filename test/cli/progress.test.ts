import assert from 'node:assert/strict';
import { Progress } from '../../src/cli/progress';

function terminal(isTTY: boolean) {
  const written: string[] = [];
  return { isTTY, columns: 60, written, write: (text: string) => written.push(text) };
}

describe('progress', () => {
  it('is one line on a terminal, taken away at the end', () => {
    const tty = terminal(true);
    let time = 0;
    const progress = new Progress(tty, () => time);
    progress.tell(1, 4, 'a.jpg');
    assert.deepEqual(tty.written, [], 'what is quick needs no bar');
    time = 200;
    progress.tell(2, 4, 'plates/a\u001bb.jpg');
    progress.tell(3, 4, 'too-soon.jpg');
    progress.end();
    assert.equal(tty.written.length, 2);
    assert.equal(tty.written[0], `\r\u001b[K${'█'.repeat(12)}${'░'.repeat(12)} 2 of 4  plates/a?b.jpg`);
    assert.equal(tty.written[1], '\r\u001b[K');
  });

  it('is nothing anywhere else', () => {
    const file = terminal(false);
    let time = 0;
    const progress = new Progress(file, () => (time += 1000));
    progress.tell(1, 2, 'a.jpg');
    progress.end();
    assert.deepEqual(file.written, []);
  });
});
