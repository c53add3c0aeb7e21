/** What the add-in needs of Excel; the manifest asks for the same. */
export const NEEDED: Readonly<Record<string, string>> = {
  SharedRuntime: "1.1",
  CustomFunctionsRuntime: "1.3",
  ExcelApi: "1.14",
};

/** Whether this Excel lacks something that the add-in cannot do without. */
export const tooOld = (): boolean =>
  Object.entries(NEEDED).some(
    ([name, version]) => !Office.context.requirements.isSetSupported(name, version),
  );
