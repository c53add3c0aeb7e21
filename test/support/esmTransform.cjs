/** Some packages come as ES modules only, which jest does not load; esbuild turns those files into CommonJS. */
const { transformSync } = require("esbuild");

const IS_MODULE = /^\s*(?:import\b(?!\s*\()|export\b)/m;

module.exports = {
  process(source, file) {
    if (!IS_MODULE.test(source)) return { code: source };
    const { code } = transformSync(source, { format: "cjs", target: "node20", sourcefile: file });
    return { code };
  },
};
