/** A browser on a shared machine may be kept waiting too long: its tests have a second try, and say so. */
if (expect.getState().testPath?.includes("/browser/")) {
  jest.retryTimes(1, { logErrorsBeforeRetry: true });
}
