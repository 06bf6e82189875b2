/** What the build makes of OpenCV's package (.run/vite-opencv.ts) beside this file. */
type Options = {
  readonly instantiateWasm: (
    imports: WebAssembly.Imports,
    done: (instance: WebAssembly.Instance, module: WebAssembly.Module) => void,
  ) => object;
};

export declare function startScript(options: Options): Promise<object>;
