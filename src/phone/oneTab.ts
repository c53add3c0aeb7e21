/** One tab has the workbook at a time, so that none writes over what another holds. */
const NAME = "carrybook-phone";

/**
 * Waits until this tab has the workbook.
 *
 * @param offer called where another tab has it, with the way to take it over
 * @param lost called when another tab takes it over
 */
export function haveToOneself(
  offer: (takeOver: () => void) => void,
  lost: () => void,
): Promise<void> {
  const { locks } = navigator;
  if (!locks) return Promise.resolve();
  return new Promise((resolve) => {
    const hold = (): Promise<never> => {
      resolve();
      return new Promise<never>(() => {});
    };
    const takeOver = (): void => void locks.request(NAME, { steal: true }, hold).catch(lost);
    void locks
      .request(NAME, { ifAvailable: true }, (lock) => (lock ? hold() : offer(takeOver)))
      .catch(lost);
  });
}
