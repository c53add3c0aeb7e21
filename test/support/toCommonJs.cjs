/** Turns TypeScript, and packages that come as ES modules only, into the CommonJS that jest loads. Types are checked by `npm run types`. */
const { transformSync } = require("esbuild");

const IS_MODULE = /^\s*(?:import\b(?!\s*\()|export\b)/m;

module.exports = {
  process(source, file) {
    const typescript = file.endsWith(".ts");
    if (!typescript && !IS_MODULE.test(source)) return { code: source };
    return transformSync(source, {
      loader: typescript ? "ts" : "js",
      format: "cjs",
      target: "node20",
      sourcefile: file,
      sourcemap: typescript ? "inline" : false,
      platform: "node",
      supported: { "dynamic-import": false },
      tsconfigRaw: {
        compilerOptions: { experimentalDecorators: true, useDefineForClassFields: false },
      },
    });
  },
};
