// no-unit-test: test/cli/actions/formats.test.ts runs the built program in a repository and outside of one
import path from 'node:path';
import { repositoryOf } from '../book/repository';
import type { Place } from '../report/place';

/** Where the book at `root` lies in its repository, and its `settings` file, if it has one. Both absolute. */
export async function placeOf(root: string, settings: string | undefined): Promise<Place> {
  const repository = await repositoryOf(root);
  const within = (file: string) => path.relative(repository, file).split(path.sep).join('/');
  const folder = within(root);
  const file = settings === undefined ? null : within(settings);
  const isOutside = file !== null && (file.startsWith('../') || path.isAbsolute(file));
  return { folder: folder && `${folder}/`, settings: isOutside ? null : file };
}
