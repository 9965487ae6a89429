// Data and pages that the bundler puts into the code as text or bytes.
declare module '*.ti3' {
  const text: string;
  export default text;
}
declare module '*.csv' {
  const text: string;
  export default text;
}
declare module '*.md' {
  const text: string;
  export default text;
}
declare module '*.css' {
  const text: string;
  export default text;
}
declare module '*.svg' {
  const text: string;
  export default text;
}
declare module '*.wasm' {
  const bytes: Uint8Array<ArrayBuffer>;
  export default bytes;
}
// Validators of the JSON schemas of what people write by hand, compiled by the build.
declare module 'compiled-schemas' {
  import type { ValidateFunction } from 'ajv';
  export const settings: ValidateFunction;
  export const house: ValidateFunction;
  export const waivers: ValidateFunction;
}
