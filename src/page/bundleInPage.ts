/** Loads the custom functions into the page as Excel would: the script against a global registry, and its metadata. */
import {
  type FunctionMetadata,
  type FunctionsBundle,
  functionsRegistry,
} from "../workbook/embedded/engine";

const runScript = (address: string): Promise<void> =>
  new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = address;
    script.onload = () => resolve();
    script.onerror = () => reject(new Error(`${address} could not be loaded.`));
    document.head.append(script);
  });

export async function bundleInPage(script: string, metadata: string): Promise<FunctionsBundle> {
  const { registry, functions } = functionsRegistry();
  Object.assign(globalThis, { CustomFunctions: registry });
  const [described] = await Promise.all([
    fetch(metadata).then((answer) => answer.json() as Promise<{ functions: FunctionMetadata[] }>),
    runScript(script),
  ]);
  return { functions, metadata: described.functions };
}
