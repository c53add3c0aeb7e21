/** Pieces of XML that the parts of a new file are put together from. */
import { encodeAttribute, encodeText } from "../package/xml";
import { escaped } from "../package/writeValues";

export const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
export const PACKAGE = "http://schemas.openxmlformats.org/package/2006";

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element; attributes that are undefined are left out. `inside` is XML already. */
export function element(name: string, attributes: Attributes = {}, inside = ""): string {
  let text = `<${name}`;
  for (const [key, value] of Object.entries(attributes))
    if (value !== undefined)
      text += ` ${key}="${typeof value === "number" ? value : encodeAttribute(value)}"`;
  return inside === "" ? `${text}/>` : `${text}>${inside}</${name}>`;
}

/** Text of a cell or a string, with the characters that XML cannot hold as the format writes them. */
export const storedText = (text: string): string => encodeText(escaped(text));

/** Blanks at the ends and line breaks stay only where that is said. */
export const keepsBlanks = (text: string): Attributes =>
  /^\s|\s$|\n/.test(text) ? { "xml:space": "preserve" } : {};
