// no-unit-test: types only
declare module 'lcms-wasm' {
  /** LittleCMS as compiled: its functions take and give numbers, pointers included. */
  export interface Lcms {
    readonly HEAPU8: Uint8Array;
    _malloc(bytes: number): number;
    _free(pointer: number): void;
    _cmsOpenProfileFromMem(pointer: number, bytes: number): number;
    _cmsCloseProfile(profile: number): number;
    _cmsCreateTransform(
      input: number,
      inputFormat: number,
      output: number,
      outputFormat: number,
      intent: number,
      flags: number,
    ): number;
    _cmsDeleteTransform(transform: number): void;
    _cmsDoTransform(transform: number, input: number, output: number, count: number): void;
    cmsCreateLab4Profile(white: null): number;
    cmsGetProfileInfoASCII(profile: number, info: number, language: string, country: string): string;
  }
  export function instantiate(options: {
    wasmBinary: Uint8Array;
    print?: (text: string) => void;
    printErr?: (text: string) => void;
  }): Promise<Lcms>;
}
