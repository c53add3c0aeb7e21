/** The grid's menus in the pane's one accent colour, instead of the engine's blue. */
import { defaultTheme } from "@univerjs/themes";

const accent = {
  50: "#f0f7f8",
  100: "#e4f0f2",
  200: "#c3dfe3",
  300: "#93c5cc",
  400: "#4e9aa5",
  500: "#1f7480",
  600: "#0b5560",
  700: "#0a4a54",
  800: "#083f48",
  900: "#07343b",
};

export const look: typeof defaultTheme = { ...defaultTheme, primary: accent };
