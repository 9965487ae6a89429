// no-unit-test: types only

/** Messages between a pool (parent) and a forked child that works for it, advanced serialisation. */
export type ChildRequest<Task> = Task & { id: number };

export type ChildReply<Done> =
  | ChildAnswer<Done>
  /** The decoder has loaded: sent once, before anything else. */
  | { kind: 'ready' }
  /** How large the task is, which sets its deadline: once the file is open, and again with its pixels counted. */
  | { id: number; kind: 'size'; megabytes: number; megapixels: number };

/** What came of a task. `code`: that of the file system's own error, such as `ENOSPC`, where it was one. */
export type ChildAnswer<Done> =
  | ({ id: number; ok: true } & Done)
  | { id: number; ok: false; message: string; code?: string };
