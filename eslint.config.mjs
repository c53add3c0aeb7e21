import js from "@eslint/js";
import importX from "eslint-plugin-import-x";
import { createTypeScriptImportResolver } from "eslint-import-resolver-typescript";
import tseslint from "typescript-eslint";

/** Who may import whom: a folder, and the only folders of src that it may take from. */
const MAY_IMPORT = {
  core: ["core"],
  functions: ["functions", "core"],
  workbook: ["workbook", "core"],
  pane: ["pane", "core", "workbook"],
};
const FOLDERS = ["core", "functions", "workbook", "pane", "page", "phone", "tools"];

const zones = Object.entries(MAY_IMPORT).map(([folder, allowed]) => ({
  target: `./src/${folder}`,
  from: FOLDERS.filter((other) => !allowed.includes(other)).map((other) => `./src/${other}`),
  message: `src/${folder} may import from ${allowed.join(", ")} only.`,
}));
/** The pane knows the port and the blueprint, never an adapter: only addin, page and phone choose one. */
const adapters = {
  target: "./src/pane",
  from: ["./src/workbook/{excel,embedded}.ts", "./src/workbook/{excel,embedded,file,light}/**/*"],
  message: "The pane takes whatever port it is given.",
};

export default tseslint.config(
  { ignores: ["dist", "node_modules", "coverage"] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    files: ["**/*.ts"],
    plugins: { "import-x": importX },
    settings: { "import-x/resolver-next": [createTypeScriptImportResolver()] },
    rules: {
      "import-x/no-restricted-paths": ["error", { zones }],
      "import-x/no-cycle": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      "@typescript-eslint/no-non-null-assertion": "off",
    },
  },
  {
    files: ["src/pane/**/*.ts"],
    rules: { "import-x/no-restricted-paths": ["error", { zones: [...zones, adapters] }] },
  },
  {
    files: ["src/core/**/*.ts"],
    rules: {
      "no-restricted-globals": ["error", "Date", "performance", "setTimeout", "window", "document"],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "Chance is an argument." },
      ],
    },
  },
  {
    // The metadata generator knows any, number and string only.
    files: ["src/functions/*.ts"],
    rules: { "@typescript-eslint/no-explicit-any": "off" },
  },
  {
    files: ["**/*.cjs", "webpack.config.js"],
    languageOptions: {
      globals: {
        require: "readonly",
        module: "writable",
        process: "readonly",
        __dirname: "readonly",
        console: "readonly",
      },
    },
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
  {
    files: ["**/*.mjs"],
    languageOptions: { globals: { process: "readonly", console: "readonly", URL: "readonly" } },
  },
);
