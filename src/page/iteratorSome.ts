/** Node 20 lacks `Iterator.prototype.some`, which the spreadsheet engine calls. Import this before the engine. */
interface WithSome {
  some?: (test: (value: unknown) => boolean) => boolean;
}

const ofArrays = Object.getPrototypeOf([][Symbol.iterator]()) as object;
const ofAll = Object.getPrototypeOf(ofArrays) as WithSome;

ofAll.some ??= function (this: Iterable<unknown>, test): boolean {
  for (const value of this) if (test(value)) return true;
  return false;
};

export {};
