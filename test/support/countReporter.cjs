/** Closes the run with the runner's own count, alone on a line. */
module.exports = class CountReporter {
  onRunComplete(_contexts, results) {
    const brokenFiles = results.testResults.filter(
      (file) => file.testExecError !== undefined && file.testExecError !== null,
    ).length;
    const failed = results.numFailedTests + brokenFiles;
    process.on("exit", () => {
      process.stdout.write(`\n${results.numPassedTests} passed, ${failed} failed\n`);
    });
  }
};
