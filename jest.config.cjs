/** Types are checked by `npm run types`; here they are only stripped. */
const strip = [
  "ts-jest",
  {
    tsconfig: {
      target: "ES2022",
      module: "CommonJS",
      moduleResolution: "Node10",
      ignoreDeprecations: "5.0",
      esModuleInterop: true,
      resolveJsonModule: true,
      isolatedModules: true,
      experimentalDecorators: true,
      useDefineForClassFields: false,
      allowJs: true,
    },
    diagnostics: false,
  },
];

module.exports = {
  testEnvironment: "node",
  roots: ["<rootDir>/test"],
  setupFiles: ["<rootDir>/test/support/fixedSeed.ts"],
  setupFilesAfterEnv: ["<rootDir>/test/support/secondTry.ts"],
  testMatch: ["**/*.test.ts"],
  transform: {
    "^.+\\.ts$": strip,
    "/node_modules/.+\\.m?js$": "<rootDir>/test/support/esmTransform.cjs",
  },
  /** Only packages that are ES modules through and through. */
  transformIgnorePatterns: [
    "/node_modules/(?!(lodash-es|nanoid|franc-min|trigram-utils|n-gram|collapse-white-space|cjk-regex|unicode-regex|regexp-util|kdbush|numfmt|rbush|quickselect|internmap|ot-json1)/)",
  ],
  /** Real browsers on machines that do much else besides. */
  testTimeout: 180_000,
  reporters: ["default", "<rootDir>/test/support/countReporter.cjs"],
};
