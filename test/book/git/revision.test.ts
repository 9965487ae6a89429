import assert from 'node:assert/strict';
import path from 'node:path';
import { openRepository } from '../../../src/book/git/repository';
import { commitOf, commitsOf, mergeBase, openWithEnds } from '../../../src/book/git/revision';
import { commit, git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

describe('revisions', () => {
  it('are commits, by whatever name', async () => {
    const top = repositoryOf({ a: '1' });
    const first = git(top, 'rev-parse', 'HEAD').trim();
    git(top, 'tag', '-a', 'v1', '-m', 'one');
    commit(top, { a: '2' });
    const repository = await openRepository(top);
    for (const name of ['HEAD~1', 'v1', first, first.slice(0, 10)])
      assert.equal(await commitOf(repository, name), first, name);
    const second = git(top, 'rev-parse', 'HEAD').trim();
    const named = ['HEAD', 'v1', 'main', '@{0}', 'HEAD'];
    assert.deepEqual(await commitsOf(repository, named), [second, first, second, second, second]);
  });

  it('that are none are told, and a name is never taken for an option', async () => {
    const repository = await openRepository(repositoryOf({ a: '1' }));
    await assert.rejects(
      commitOf(repository, 'nowhere'),
      /^GitError: There is no revision "nowhere" here\. "git branch --all" and "git tag" tell which there are\.$/,
    );
    await assert.rejects(commitOf(repository, '--all'), /There is no revision "--all" here/);
    await assert.rejects(commitOf(repository, 'HEAD^{tree}'), /There is no revision/);
    await assert.rejects(commitOf(repository, 'HEAD\nHEAD'), /There is no revision/);
    await assert.rejects(commitOf(repository, ''), /There is no revision/);
    await assert.rejects(commitsOf(repository, ['HEAD', 'nowhere', 'gone']), /no revision "nowhere"/);
    await assert.rejects(
      commitOf(repository, 'main...work'),
      /^GitError: "main\.\.\.work" is a range, .* from where the two parted, .*: evengrey compare main work\.$/,
    );
    await assert.rejects(
      commitOf(repository, 'v1.0..'),
      / from v1\.0 itself, .*: evengrey compare v1\.0 HEAD --no-merge-base\.$/,
    );
    const empty = temporaryFolder();
    git(empty, 'init', '--quiet');
    await assert.rejects(commitOf(await openRepository(empty), 'HEAD'), /There is no commit yet/);
  });

  it('that are none are told with the name that was meant, and how a branch of a remote comes here', async () => {
    const top = repositoryOf({ a: '1' });
    git(top, 'branch', 'work');
    git(top, 'tag', 'print-2026');
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--single-branch', '--branch=main', `file://${top}`, clone);
    const repository = await openRepository(clone);
    const told = (name: string) => commitOf(repository, name).then(assert.fail, ({ message }) => message);
    const fetch = /"(\+refs\/heads\/work:refs\/remotes\/origin\/work)"/;
    const message = await told('origin/work');
    assert.match(
      message,
      /^There is no revision "origin\/work" here\. If "origin" has that branch, fetch it: git fetch origin "/,
    );
    assert.match(
      await told('orgin/main'),
      /^There is no revision "orgin\/main" here\. Did you mean "origin\/main"\?/,
    );
    assert.match(
      await told('print-2025'),
      / Did you mean "print-2026"\? .*a remote alone has is to be fetched first\.$/,
    );
    git(clone, 'checkout', '--quiet', '--detach');
    git(clone, 'branch', '--quiet', '-D', 'main');
    assert.match(await told('origin/mian'), / Did you mean "origin\/main"\? If "origin" has/);
    assert.match(await told('main'), /Did you mean "origin\/main"\?/);
    git(clone, 'fetch', '--quiet', 'origin', fetch.exec(message)![1]);
    assert.match(await commitOf(repository, 'origin/work'), /^[0-9a-f]{40}$/, 'what is said is enough');
  });

  it('part at their merge base', async () => {
    const top = repositoryOf({ a: '1' });
    const parted = git(top, 'rev-parse', 'HEAD').trim();
    git(top, 'checkout', '--quiet', '-b', 'work');
    const work = commit(top, { b: '1' });
    git(top, 'checkout', '--quiet', 'main');
    const main = commit(top, { a: '2' });
    const repository = await openRepository(top);
    assert.equal(await mergeBase(repository, main, work, ''), parted);
    // in one question too, by names of every kind
    git(top, 'tag', '-a', 'v1', '-m', 'one', 'work');
    for (const name of ['work', 'refs/heads/work', 'v1', work, work.slice(0, 9), 'main@{0}~1^{}'])
      assert.deepEqual(
        (await openWithEnds(top, 'HEAD', name)).ends,
        { base: main, head: await commitOf(repository, name), parted },
        name,
      );
  });

  it('are asked for one by one where one question has no answer', async () => {
    const top = repositoryOf({ a: '1' });
    git(top, 'checkout', '--quiet', '--orphan', 'other');
    commit(top, { a: '3', 'main^{commit}...other^{commit}': '' });
    const repository = await openRepository(top);
    for (const name of ['nowhere', 'HEAD^{tree}', 'main..other', '--all', '', '^main', 'main\nHEAD', ':a'])
      assert.deepEqual(await openWithEnds(top, name, 'other'), { repository, ends: null }, name);
    assert.equal((await openWithEnds(top, 'main', 'other')).ends, null, 'they share nothing');
    await assert.rejects(openWithEnds(temporaryFolder(), 'main', 'other'), /is in no git repository/);
  });

  it('of histories that share nothing have none, and a shallow clone says that it cannot know', async () => {
    const top = repositoryOf({ a: '1' });
    const main = git(top, 'rev-parse', 'HEAD').trim();
    git(top, 'checkout', '--quiet', '--orphan', 'other');
    const other = commit(top, { a: '3' });
    const repository = await openRepository(top);
    await assert.rejects(
      mergeBase(repository, main, other, 'Otherwise so.'),
      /share no history\. Otherwise so\.$/,
    );

    git(top, 'checkout', '--quiet', 'main');
    commit(top, { a: '4' });
    git(top, 'branch', 'work', 'main~1');
    git(top, 'checkout', '--quiet', 'work');
    commit(top, { b: '1' });
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--depth=1', '--no-single-branch', `file://${top}`, clone);
    const shallow = await openRepository(clone);
    const [x, y] = [await commitOf(shallow, 'origin/main'), await commitOf(shallow, 'origin/work')];
    await assert.rejects(
      mergeBase(shallow, x, y, ''),
      /does not reach back to where .*git fetch --unshallow/,
    );
    await assert.rejects(commitOf(shallow, main), /There is no revision .* This clone is shallow/);
  });
});
