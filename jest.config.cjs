module.exports = {
  testEnvironment: "node",
  roots: ["<rootDir>/test"],
  setupFiles: ["<rootDir>/test/support/fixedSeed.ts"],
  setupFilesAfterEnv: ["<rootDir>/test/support/secondTry.ts"],
  testMatch: ["**/*.test.ts"],
  transform: {
    "^.+\\.ts$": "<rootDir>/test/support/toCommonJs.cjs",
    "/node_modules/.+\\.m?js$": "<rootDir>/test/support/toCommonJs.cjs",
  },
  /** Only packages that are ES modules through and through. */
  transformIgnorePatterns: [
    "/node_modules/(?!(lodash-es|nanoid|franc-min|trigram-utils|n-gram|collapse-white-space|cjk-regex|unicode-regex|regexp-util|kdbush|numfmt|rbush|quickselect|internmap|ot-json1)/)",
  ],
  /**
   * Looked up through the sandbox, each of these costs a call into the host: the physics runs twenty
   * times slower. Handed in as locals they cost nothing.
   */
  sandboxInjectedGlobals: ["Math", "Number", "Array", "Map", "Set", "Float64Array", "Object"],
  /** Real browsers on machines that do much else besides. */
  testTimeout: 180_000,
  reporters: ["default", "<rootDir>/test/support/countReporter.cjs"],
};
