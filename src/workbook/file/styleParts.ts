/** Looks of cells as the styles part of a file, and back (ECMA-376 part 1, 18.8). */
import { attributesOf, TagReader, type Tag } from "../package/xml";
import type { CellLook, Edge } from "../wholeBook";
import { element, HEAD, MAIN } from "./xmlText";

/** Number formats that files know by a number (18.8.30, for English). */
export const BUILT_IN_FORMATS: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "m/d/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yyyy h:mm",
  37: "#,##0 ;(#,##0)",
  38: "#,##0 ;[Red](#,##0)",
  39: "#,##0.00;(#,##0.00)",
  40: "#,##0.00;[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mmss.0",
  48: "##0.0E+0",
  49: "@",
};
const FORMAT_IDS = new Map(Object.entries(BUILT_IN_FORMATS).map(([id, code]) => [code, +id]));
/** Numbers below are kept for the built-in ones. */
const FIRST_OWN_FORMAT = 164;

const FONT = "Arial";
const SIZE = 11;

/** Gives each different text a number, in the order in which they come. */
class Numbered {
  private readonly numbers = new Map<string, number>();

  constructor(first: readonly string[] = []) {
    for (const text of first) this.of(text);
  }

  of(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    this.numbers.set(text, this.numbers.size);
    return this.numbers.size - 1;
  }

  get all(): string[] {
    return [...this.numbers.keys()];
  }
}

/** A look without what every cell has; undefined where nothing is left. */
export function withoutUsual(look: CellLook): CellLook | undefined {
  const usual: Record<string, unknown> = {
    font: FONT,
    size: SIZE,
    colour: "000000",
    format: "General",
    down: "bottom",
  };
  const said = Object.entries(look).filter(
    ([key, value]) => value !== undefined && usual[key] !== value,
  );
  return said.length === 0 ? undefined : (Object.fromEntries(said) as CellLook);
}

const colour = (name: string, rgb: string): string =>
  element(name, { rgb: `FF${rgb.toUpperCase()}` });

const fontXml = (look: CellLook): string =>
  element(
    "font",
    {},
    (look.bold ? "<b/>" : "") +
      (look.italic ? "<i/>" : "") +
      (look.struck ? "<strike/>" : "") +
      (look.underlined ? "<u/>" : "") +
      element("sz", { val: look.size ?? SIZE }) +
      (look.colour === undefined ? "" : colour("color", look.colour)) +
      element("name", { val: look.font ?? FONT }) +
      '<family val="2"/>',
  );

const fillXml = ({ fill }: CellLook): string =>
  fill === undefined
    ? '<fill><patternFill patternType="none"/></fill>'
    : `<fill><patternFill patternType="solid">${colour("fgColor", fill)}<bgColor indexed="64"/></patternFill></fill>`;

function borderXml(look: CellLook): string {
  const side = (name: "left" | "right" | "top" | "bottom"): string => {
    const edge = look[name];
    if (!edge) return `<${name}/>`;
    const inside = edge.colour === undefined ? "" : colour("color", edge.colour);
    return element(name, { style: edge.kind }, inside);
  };
  return `<border>${side("left")}${side("right")}${side("top")}${side("bottom")}<diagonal/></border>`;
}

/** Collects the looks of a workbook, and writes them as its styles part. */
export class StylesWriter {
  private readonly fonts = new Numbered([fontXml({})]);
  private readonly fills = new Numbered([
    fillXml({}),
    '<fill><patternFill patternType="gray125"/></fill>',
  ]);
  private readonly borders = new Numbered([borderXml({})]);
  private readonly formats = new Numbered();
  private readonly cells = new Numbered([
    '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>',
  ]);
  private readonly known = new Map<CellLook, number>();

  /** The index by which cells name a look; 0 for none. */
  of(look: CellLook | undefined): number {
    if (!look) return 0;
    const known = this.known.get(look) ?? this.cells.of(this.cellXml(look));
    this.known.set(look, known);
    return known;
  }

  private formatId(format: string | undefined): number {
    if (format === undefined || format === "General") return 0;
    return FORMAT_IDS.get(format) ?? FIRST_OWN_FORMAT + this.formats.of(format);
  }

  private cellXml(look: CellLook): string {
    const ids = {
      numFmtId: this.formatId(look.format),
      fontId: this.fonts.of(fontXml(look)),
      fillId: this.fills.of(fillXml(look)),
      borderId: this.borders.of(borderXml(look)),
    };
    const { across, down, wraps } = look;
    const aligned = across !== undefined || down !== undefined || wraps === true;
    return element(
      "xf",
      {
        ...ids,
        xfId: 0,
        applyNumberFormat: ids.numFmtId === 0 ? undefined : 1,
        applyFont: ids.fontId === 0 ? undefined : 1,
        applyFill: ids.fillId === 0 ? undefined : 1,
        applyBorder: ids.borderId === 0 ? undefined : 1,
        applyAlignment: aligned ? 1 : undefined,
      },
      aligned
        ? element("alignment", { horizontal: across, vertical: down, wrapText: wraps && 1 })
        : "",
    );
  }

  toXml(): string {
    const list = (name: string, items: readonly string[]): string =>
      items.length === 0 ? "" : element(name, { count: items.length }, items.join(""));
    const formats = this.formats.all.map((formatCode, index) =>
      element("numFmt", { numFmtId: FIRST_OWN_FORMAT + index, formatCode }),
    );
    return (
      HEAD +
      element(
        "styleSheet",
        { xmlns: MAIN },
        list("numFmts", formats) +
          list("fonts", this.fonts.all) +
          list("fills", this.fills.all) +
          list("borders", this.borders.all) +
          '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
          list("cellXfs", this.cells.all) +
          '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
          '<dxfs count="0"/><tableStyles count="0" defaultTableStyle="TableStyleMedium2" defaultPivotStyle="PivotStyleLight16"/>',
      )
    );
  }
}

// Reading.

/** The first 64 colours that files know by a number (18.8.27); 64 and 65 are the system's own. */
const INDEXED = (
  "000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 000000 FFFFFF FF0000 00FF00 0000FF FFFF00 " +
  "FF00FF 00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF " +
  "660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF " +
  "CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 " +
  "003366 339966 003300 333300 993300 993366 333399 333333"
).split(" ");

/** Elements of the theme's colours in the order in which cells count them (18.8.3 and practice of Excel). */
const THEME_ORDER =
  "lt1 dk1 lt2 dk2 accent1 accent2 accent3 accent4 accent5 accent6 hlink folHlink";

/** Colours of a theme part, by the number that cells use. */
export function themeColours(xml: string): string[] {
  const found = new Map<string, string>();
  const reader = new TagReader(xml);
  const scheme = reader.find("clrScheme");
  let name = "";
  if (scheme)
    for (let tag = reader.next(); tag && tag.name !== "clrScheme"; tag = reader.next()) {
      if (tag.kind === "close") continue;
      const { val, lastClr } = attributesOf(xml, tag);
      if (tag.name === "srgbClr") found.set(name, val ?? "");
      else if (tag.name === "sysClr") found.set(name, lastClr ?? "");
      else name = tag.name;
    }
  return THEME_ORDER.split(" ").map((each) => (found.get(each) ?? "").toLowerCase());
}

/** A share towards white (above 0) or black (below 0) of the lightness (18.8.3, tint). */
function tinted(rgb: string, tint: number): string {
  if (tint === 0) return rgb;
  const parts = [0, 2, 4].map((at) => parseInt(rgb.slice(at, at + 2), 16) / 255);
  const most = Math.max(...parts);
  const least = Math.min(...parts);
  const light = (most + least) / 2;
  const next = tint < 0 ? light * (1 + tint) : light * (1 - tint) + tint;
  const spread = most - least;
  const chroma = spread === 0 ? 0 : spread / (1 - Math.abs(2 * light - 1));
  const scale = spread === 0 ? 0 : (chroma * (1 - Math.abs(2 * next - 1))) / spread;
  return parts
    .map((part) => Math.round(255 * Math.min(1, Math.max(0, next + (part - light) * scale))))
    .map((part) => part.toString(16).padStart(2, "0"))
    .join("");
}

/** The look of each index that cells name, out of a styles part. */
export function readLooks(xml: string, theme: readonly string[]): (CellLook | undefined)[] {
  const formats = new Map(Object.entries(BUILT_IN_FORMATS).map(([id, code]) => [+id, code]));
  const fonts: CellLook[] = [];
  const fills: CellLook[] = [];
  const borders: CellLook[] = [];
  const looks: CellLook[] = [];
  const reader = new TagReader(xml);
  const colourOf = (tag: Tag): string | undefined => {
    const { rgb, theme: number, indexed, tint } = attributesOf(xml, tag);
    const base =
      rgb !== undefined
        ? rgb.slice(-6).toLowerCase()
        : number !== undefined
          ? theme[+number]
          : INDEXED[Number(indexed ?? 64)]?.toLowerCase();
    return base ? tinted(base, Number(tint ?? 0)) : undefined;
  };
  const children = (open: Tag, each: (tag: Tag) => void): void => {
    if (open.kind !== "open") return;
    for (let tag = reader.next(); tag; tag = reader.next()) {
      if (tag.kind === "close") {
        if (tag.name === open.name) return;
      } else each(tag);
    }
  };
  const isOn = (tag: Tag): boolean => !["0", "false"].includes(attributesOf(xml, tag)["val"] ?? "");
  const font = (open: Tag): CellLook => {
    const look: Record<string, unknown> = {};
    children(open, (tag) => {
      const { val = "" } = attributesOf(xml, tag);
      if (tag.name === "b" && isOn(tag)) look["bold"] = true;
      else if (tag.name === "i" && isOn(tag)) look["italic"] = true;
      else if (tag.name === "strike" && isOn(tag)) look["struck"] = true;
      else if (tag.name === "u" && val !== "none") look["underlined"] = true;
      else if (tag.name === "sz") look["size"] = Number(val);
      else if (tag.name === "name") look["font"] = val;
      else if (tag.name === "color") look["colour"] = colourOf(tag);
    });
    return look;
  };
  const fill = (open: Tag): CellLook => {
    let solid = false;
    let front: string | undefined;
    children(open, (tag) => {
      if (tag.name === "patternFill")
        solid = !["none", undefined].includes(attributesOf(xml, tag)["patternType"]);
      else if (tag.name === "fgColor" && solid) front = colourOf(tag);
    });
    return front === undefined ? {} : { fill: front };
  };
  const border = (open: Tag): CellLook => {
    const look: Record<string, Edge> = {};
    let side = "";
    children(open, (tag) => {
      if (tag.name === "color") {
        const edge = look[side];
        const found = colourOf(tag);
        if (edge && found !== undefined) look[side] = { ...edge, colour: found };
        return;
      }
      side = tag.name;
      const { style } = attributesOf(xml, tag);
      if (style !== undefined && style !== "none" && /^(left|right|top|bottom)$/.test(side))
        look[side] = { kind: style };
    });
    return look;
  };
  const cell = (open: Tag): CellLook => {
    const { numFmtId, fontId, fillId, borderId } = attributesOf(xml, open);
    const format = formats.get(Number(numFmtId ?? 0));
    let look: CellLook = {
      ...fonts[Number(fontId ?? 0)],
      ...fills[Number(fillId ?? 0)],
      ...borders[Number(borderId ?? 0)],
      ...(format === undefined ? {} : { format }),
    };
    children(open, (tag) => {
      if (tag.name !== "alignment") return;
      const { horizontal, vertical, wrapText } = attributesOf(xml, tag);
      const across = horizontal === "centerContinuous" ? "center" : horizontal;
      const isKnown = /^(left|center|right|justify|distributed)$/.test(across ?? "");
      look = {
        ...look,
        ...(isKnown ? { across: across as CellLook["across"] & string } : {}),
        ...(/^(top|center|bottom)$/.test(vertical ?? "")
          ? { down: vertical as CellLook["down"] & string }
          : {}),
        ...(wrapText === "1" || wrapText === "true" ? { wraps: true as const } : {}),
      };
    });
    return look;
  };
  for (let tag = reader.next(); tag; tag = reader.next()) {
    if (tag.kind === "close") continue;
    if (tag.name === "numFmt") {
      const { numFmtId, formatCode } = attributesOf(xml, tag);
      formats.set(Number(numFmtId), formatCode ?? "General");
    } else if (tag.name === "fonts") children(tag, (each) => void fonts.push(font(each)));
    else if (tag.name === "fills") children(tag, (each) => void fills.push(fill(each)));
    else if (tag.name === "borders") children(tag, (each) => void borders.push(border(each)));
    else if (tag.name === "cellXfs") {
      children(tag, (each) => void looks.push(cell(each)));
      break;
    }
  }
  return looks.map(withoutUsual);
}
