/**
 * The parts of an .xlsx file and how they hang together: the workbook, its sheets, their tables. Read
 * from the bytes and given back with single parts replaced; all others stay byte for byte.
 * Format: ECMA-376 part 1 (SpreadsheetML) and part 2 (packages and relationships).
 */
import { PortError } from "../port";
import { sentences } from "../sentences";
import { attributeOf, attributesOf, decodeXml, encodeXml, TagReader } from "./xml";
import { ZipArchive } from "./zip";

export interface Relation {
  readonly id: string;
  /** Last word of its type, as "worksheet". */
  readonly kind: string;
  /** Path of the part inside the package; null where it is outside. */
  readonly path: string | null;
}

export interface SheetPart {
  readonly name: string;
  readonly path: string;
  readonly hidden: boolean;
  /** false for chart sheets and the dialogue sheets of old. */
  readonly isGrid: boolean;
}

export interface DefinedName {
  readonly name: string;
  /** As stored, without "=": a reference, a constant or a formula. */
  readonly refersTo: string;
  /** Index among the sheets, where the name is known on that sheet only. */
  readonly sheetIndex?: number;
  readonly hidden: boolean;
}

/** Reads a package without changing it. */
export class WorkbookPackage {
  private readonly texts = new Map<string, string>();
  readonly workbookPath: string;

  private constructor(private readonly zip: ZipArchive) {
    const main = this.relationsOf("").find(({ kind }) => kind === "officeDocument");
    const path = main?.path ?? "xl/workbook.xml";
    if (!zip.has(path) || !this.xml(path).includes("<"))
      throw new PortError("invalid", sentences.notAWorkbook);
    this.workbookPath = path;
  }

  /**
   * @throws PortError "invalid" where the bytes are no workbook, damaged, or protected by a password
   */
  static read(bytes: Uint8Array): WorkbookPackage {
    return new WorkbookPackage(ZipArchive.read(bytes));
  }

  get paths(): string[] {
    return this.zip.paths;
  }

  has(path: string): boolean {
    return this.zip.has(path);
  }

  bytes(path: string): Uint8Array | null {
    return this.zip.bytes(path);
  }

  /** Text of an XML part; "" where there is none. */
  xml(path: string): string {
    const known = this.texts.get(path);
    if (known !== undefined) return known;
    const bytes = this.zip.bytes(path);
    let text = "";
    try {
      text = bytes === null ? "" : decodeXml(bytes);
    } catch {
      throw new PortError("invalid", sentences.fileBroken);
    }
    this.texts.set(path, text);
    return text;
  }

  /** Lets go of the text of a large part. */
  forget(path: string): void {
    this.texts.delete(path);
  }

  /** What a part points to; "" stands for the package itself. */
  relationsOf(path: string): Relation[] {
    const slash = path.lastIndexOf("/");
    const folder = path.slice(0, slash + 1);
    const text = this.xml(`${folder}_rels/${path.slice(slash + 1)}.rels`);
    const reader = new TagReader(text);
    const found: Relation[] = [];
    for (let tag = reader.find("Relationship"); tag; tag = reader.find("Relationship")) {
      const { Id = "", Type = "", Target = "", TargetMode } = attributesOf(text, tag);
      found.push({
        id: Id,
        kind: Type.slice(Type.lastIndexOf("/") + 1),
        path: TargetMode === "External" ? null : resolved(folder, Target),
      });
    }
    return found;
  }

  /** Paths of the parts of one kind that a part points to. */
  related(path: string, kind: string): string[] {
    return this.relationsOf(path)
      .filter((relation) => relation.kind === kind)
      .flatMap(({ path: found }) => found ?? []);
  }

  /** The sheets in the order of their tabs. */
  sheets(): SheetPart[] {
    const text = this.xml(this.workbookPath);
    const relations = new Map(this.relationsOf(this.workbookPath).map((each) => [each.id, each]));
    const reader = new TagReader(text);
    const sheets: SheetPart[] = [];
    for (let tag = reader.find("sheet"); tag; tag = reader.find("sheet")) {
      const attributes = attributesOf(text, tag);
      const id = Object.entries(attributes).find(([name]) => /(^|:)id$/.test(name))?.[1] ?? "";
      const relation = relations.get(id);
      sheets.push({
        name: attributes["name"] ?? "",
        path: relation?.path ?? "",
        hidden: attributes["state"] === "hidden" || attributes["state"] === "veryHidden",
        isGrid: relation?.kind === "worksheet" && this.has(relation.path ?? ""),
      });
    }
    return sheets;
  }

  definedNames(): DefinedName[] {
    const text = this.xml(this.workbookPath);
    const reader = new TagReader(text);
    const found: DefinedName[] = [];
    for (let tag = reader.find("definedName"); tag; tag = reader.find("definedName")) {
      const { name = "", localSheetId, hidden } = attributesOf(text, tag);
      found.push({
        name,
        refersTo: reader.text(tag).trim(),
        ...(localSheetId === undefined ? {} : { sheetIndex: Number(localSheetId) }),
        hidden: hidden === "1" || hidden === "true",
      });
    }
    return found;
  }

  /** Whether days are counted from 1 January 1904 (ECMA-376 part 1, 18.17.4.1). */
  get counts1904(): boolean {
    const text = this.xml(this.workbookPath);
    const tag = new TagReader(text).find("workbookPr");
    const value = tag && attributeOf(text, tag, "date1904");
    return value === "1" || value === "true";
  }

  /** Whether a signature covers the parts, which any change would break (ECMA-376 part 2, 10). */
  get isSigned(): boolean {
    return (
      this.paths.some((path) => /^_xmlsignatures\//i.test(path)) ||
      this.relationsOf("").some(({ kind }) => kind === "origin")
    );
  }

  /** The package with other text in some parts, as bytes. */
  replacing(parts: ReadonlyMap<string, string>): Uint8Array {
    return this.zip
      .replacing(new Map([...parts].map(([path, text]) => [path, encodeXml(text)])))
      .toBytes();
  }
}

/** A target as the path of a part: from the root of the package, or from the folder of its source. */
function resolved(folder: string, target: string): string {
  const path = decodeURIComponentSafely(target);
  const steps = (path.startsWith("/") ? path : `${folder}${path}`).split("/");
  const walked: string[] = [];
  for (const step of steps) {
    if (step === "..") walked.pop();
    else if (step !== "" && step !== ".") walked.push(step);
  }
  return walked.join("/");
}

function decodeURIComponentSafely(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
