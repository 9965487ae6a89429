/** The name of a picture, with its folder where one of the others has the same name. Paths by forward slashes. */
export const toldApart = (path: string, others: readonly (string | null)[]): string =>
  others.some(other => other !== null && other !== path && nameOf(other) === nameOf(path))
    ? path
    : nameOf(path);

const nameOf = (path: string) => path.slice(path.lastIndexOf('/') + 1);
