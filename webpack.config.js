/**
 * Builds the add-in into dist/: functions.js (self-contained), functions.json, addin.html with
 * addin.js, icons and the manifest. The embedded workbook's page is bundled by
 * src/tools/buildPage.ts, which takes a second where webpack takes a minute; the pages that only
 * tell something, by src/tools/buildPages.ts.
 *
 * npm run build -- --env host=https://example.org/carrybook  rewrites every address of the manifest.
 */
const { resolve } = require("node:path");
const CopyPlugin = require("copy-webpack-plugin");
const HtmlPlugin = require("html-webpack-plugin");
const { DefinePlugin } = require("webpack");
require("tsx/cjs");
const { functionExamples } = require("./src/tools/functionExamples.ts");
const { FunctionsMetadataPlugin } = require("./src/tools/functionsMetadata.ts");
const { hostRoot, LOCAL_HOST } = require("./src/tools/manifestFor.ts");
const { ManifestPlugin } = require("./src/tools/manifestPlugin.ts");

/** The page of the shared runtime: custom functions first, then the pane; each script with its build in the query. */
const addinPage = (script, filename) =>
  new HtmlPlugin({
    template: "./src/addin/addin.html",
    filename,
    chunks: ["functions", script],
    chunksSortMode: "manual",
    scriptLoading: "blocking",
    inject: "body",
    hash: true,
  });

const icons = () =>
  new CopyPlugin({ patterns: [{ from: "assets/*.png", to: "assets/[name][ext]" }] });

module.exports = ({ only, host = LOCAL_HOST }, { mode = "production" }) => {
  const functionsOnly = only === "functions";
  const root = hostRoot(host);
  return {
    mode,
    devtool: mode === "development" ? "source-map" : false,
    entry: {
      functions: "./src/functions/index.ts",
      ...(functionsOnly
        ? {}
        : { addin: "./src/addin/addin.ts", selfTest: "./src/addin/selfTest/page.ts" }),
    },
    output: { path: resolve(__dirname, "dist"), filename: "[name].js" },
    resolve: {
      extensions: [".ts", ".js"],
      alias: {
        "@stdlib/assert-has-generator-support$": resolve(
          __dirname,
          "src/tools/generatorSupport.cjs",
        ),
      },
    },
    module: {
      rules: [{ test: /\.ts$/, loader: "ts-loader", options: { transpileOnly: true } }],
    },
    performance: { hints: false },
    plugins: [
      new FunctionsMetadataPlugin(root),
      ...(functionsOnly
        ? []
        : [
            addinPage("addin", "addin.html"),
            addinPage("selfTest", "self-test.html"),
            new DefinePlugin({ FUNCTION_EXAMPLES: JSON.stringify(functionExamples()) }),
            icons(),
            new ManifestPlugin(root),
          ]),
    ],
  };
};
