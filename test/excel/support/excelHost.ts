/**
 * Excel's side of the client library, over a workbook in memory. Like Excel it works a batch off
 * action by action, stops at the first that fails, and keeps what was done until then.
 */
import {
  callMember,
  HostError,
  HostObject,
  readMember,
  setMember,
  UnknownToHost,
} from "./hostObject";
import {
  EXCEL_2021,
  loadLibrary,
  type ActionInfo,
  type ArgumentInfo,
  type HostMessage,
  type ObjectPathInfo,
  type OfficeLibrary,
  type RequestBody,
  type RequirementSets,
  type ResponseBody,
} from "./library";
import { HostCollection } from "./hostObject";
import { RangeObject } from "./rangeObject";
import { BookModel } from "./sheetModel";
import { WorkbookObject } from "./workbookObject";

const ACTION = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 } as const;
const PATH = { global: 1, method: 3, property: 4, indexer: 5, reference: 6, none: 7 } as const;
/** Flag of a request that may wait until the player has left the cell. */
const WAITS_FOR_CELL = 64;
const EVENT = 65_536;
const EVENT_TYPES: Readonly<Record<string, number>> = {
  ...{ changed: 10, added: 13, deleted: 15, calculated: 16 },
};

/** An action about to be done: "Worksheet.Add", "Range.Values=" and the like. */
export type Refusal = (action: string, count: number) => HostError | null;

export class ExcelHost {
  readonly book: BookModel;
  readonly library: OfficeLibrary;
  /** Names that were asked for and that the host does not know; a test must find none. */
  readonly unknown: string[] = [];
  /** Requests answered so far, without those in which the library gives references back, and the letters of the longest one. */
  syncs = 0;
  longest = 0;
  /** What was done in the last request. */
  done: string[] = [];
  /** Makes an action fail. */
  refuse: Refusal = () => null;
  private readonly listening = new Set<string>();
  private readonly kept = { count: 0 };
  private readonly references = new Map<string, HostObject>();
  private editing: { ends: Promise<void>; end: () => void } | null = null;

  constructor({
    firstSheet = "Mine",
    sets = EXCEL_2021,
  }: { firstSheet?: string; sets?: RequirementSets } = {}) {
    this.book = new BookModel(firstSheet);
    this.library = loadLibrary(this, sets);
  }

  /** The player starts typing in a cell; answers the way to leave it. */
  edit(): () => void {
    let end = (): void => {};
    const ends = new Promise<void>((resolve) => (end = resolve));
    this.editing = { ends, end };
    return () => {
      this.editing = null;
      end();
    };
  }

  async answer(body: RequestBody, flags: number): Promise<ResponseBody> {
    // Given back at any time, as the library would otherwise try again for many seconds.
    if (isTidying(body)) return this.work(body);
    if (this.editing && !(flags & WAITS_FOR_CELL))
      return failed([], "InvalidOperationInCellEditMode", "Excel is in cell-editing mode.", 0);
    await this.editing?.ends;
    this.syncs += 1;
    this.longest = Math.max(this.longest, JSON.stringify(body).length);
    this.done = [];
    const before = this.book.picture();
    const sheets = this.book.sheets.length;
    const response = this.work(body);
    if (this.book.picture() !== before) this.tell("changed");
    if (this.book.sheets.length > sheets) this.tell("added");
    return response;
  }

  private work({ Actions, ObjectPaths }: RequestBody): ResponseBody {
    const root = new WorkbookObject(this.book, this.listening, this.references);
    const batch = new Batch(ObjectPaths, this.references, this.kept, () => root);
    const results: { ActionId: number; Value: unknown }[] = [];
    for (const [index, action] of Actions.entries()) {
      try {
        const value = batch.act(action, (name) => this.permit(name));
        results.push({ ActionId: action.Id, Value: value });
      } catch (error) {
        if (error instanceof HostError) return failed(results, error.code, error.message, index);
        this.unknown.push(String(error));
        throw error;
      }
    }
    return { Results: results };
  }

  private permit(action: string): void {
    if (action === "Workbook._RemoveReference") return;
    const count = this.done.filter((name) => name === action).length;
    const refused = this.refuse(action, count);
    if (refused) throw refused;
    this.done.push(action);
  }

  private tell(event: string): void {
    if (!this.listening.has(event)) return;
    const message: HostMessage = {
      ...{ messageCategory: EVENT, messageType: EVENT_TYPES[event]!, targetId: "Workbook" },
      message: JSON.stringify({ worksheetId: this.book.active.id, address: "A1", source: "Local" }),
    };
    setTimeout(() => this.library.tell([message]));
  }

  /** The player types into a cell. */
  type(sheet: string, row: number, column: number, value: string | number): void {
    new RangeObject(this.book.sheet(sheet), {
      top: row,
      bottom: row,
      left: column,
      right: column,
    }).Values = [[value]];
    this.tell("changed");
  }

  /** Events that somebody listens to. */
  get heard(): string[] {
    return [...this.listening].sort();
  }

  /** Forgets all handlers, as a host does when it starts anew. */
  forget(): void {
    this.listening.clear();
  }
}

const failed = (
  Results: ResponseBody["Results"],
  Code: string,
  Message: string,
  ActionIndex: number,
): ResponseBody => ({ Results, Error: { Code, Message, Location: "", ActionIndex } });

/** After each run the library lets go of the ranges it had kept; nobody waits for that. */
const isTidying = ({ Actions }: RequestBody): boolean =>
  Actions.every(
    ({ ActionType, Name }) => ActionType === ACTION.instantiate || Name === "_RemoveReference",
  );

/** The objects of one request, found by their paths. */
class Batch {
  private readonly found = new Map<number, HostObject | null>();

  constructor(
    private readonly paths: RequestBody["ObjectPaths"],
    private readonly references: Map<string, HostObject>,
    private readonly kept: { count: number },
    private readonly root: () => HostObject,
  ) {}

  act(action: ActionInfo, permit: (name: string) => void): unknown {
    if (action.ActionType === ACTION.trace) return null;
    const path = this.paths[action.ObjectPathId]!;
    if (action.ActionType === ACTION.instantiate) return this.identity(this.object(path, permit));
    const object = this.object(path, permit);
    if (action.ActionType === ACTION.query)
      return this.read(object, action.QueryInfo?.Select ?? []);
    if (!object && action.Name.startsWith("_")) return null;
    if (!object) throw new HostError("ItemNotFound", "The object is null.");
    const args = this.argumentsOf(action.ArgumentInfo);
    const name = `${object.kind}.${action.Name}`;
    if (action.ActionType === ACTION.set) {
      permit(`${name}=`);
      setMember(object, action.Name, args[0]);
      return null;
    }
    if (action.ActionType !== ACTION.method)
      throw new UnknownToHost(`The host in memory knows no action ${action.ActionType}.`);
    permit(name);
    return callMember(object, action.Name, args) ?? null;
  }

  private object(path: ObjectPathInfo, permit: (name: string) => void): HostObject | null {
    const known = this.found.get(path.Id);
    if (known !== undefined) return known;
    const object = this.follow(path, permit);
    this.found.set(path.Id, object);
    return object;
  }

  private follow(path: ObjectPathInfo, permit: (name: string) => void): HostObject | null {
    if (path.ObjectPathType === PATH.global) return this.root();
    if (path.ObjectPathType === PATH.none) return null;
    if (path.ObjectPathType === PATH.reference) {
      const kept = this.references.get(path.Name);
      if (!kept) throw new HostError("InvalidReference", `No reference ${path.Name}.`);
      return kept;
    }
    const parent = this.object(this.paths[path.ParentObjectPathId!]!, permit);
    if (!parent) throw new HostError("ItemNotFound", "The object is null.");
    if (path.ObjectPathType === PATH.property) return readMember(parent, path.Name) as HostObject;
    const args = this.argumentsOf(path.ArgumentInfo);
    const method = path.ObjectPathType === PATH.indexer ? "GetItem" : path.Name;
    if (!method.startsWith("Get")) permit(`${parent.kind}.${method}`);
    return callMember(parent, method, args) as HostObject | null;
  }

  private argumentsOf(info: ArgumentInfo | undefined): unknown[] {
    const ids = info?.ReferencedObjectPathIds ?? [];
    return (info?.Arguments ?? []).map((value, index) =>
      typeof ids[index] === "number" && ids[index] > 0
        ? this.object(this.paths[ids[index]]!, () => {})
        : value,
    );
  }

  /** What the library needs to find the object again. */
  private identity(object: HostObject | null): unknown {
    if (!object) return null;
    if (object instanceof RangeObject) {
      const id = `{range-${++this.kept.count}}`;
      this.references.set(id, object);
      return { _ReferenceId: id };
    }
    const { Id, _Id } = object as { Id?: string; _Id?: string };
    return Id !== undefined ? { Id } : _Id !== undefined ? { _Id } : {};
  }

  private read(object: HostObject | null, select: readonly string[]): unknown {
    if (!object) return null;
    if (object instanceof HostCollection)
      return {
        _Items: object.items.map((item) => ({
          ...(this.identity(item) as object),
          ...this.properties(item, select),
        })),
      };
    return this.properties(object, select);
  }

  private properties(object: HostObject, select: readonly string[]): Record<string, unknown> {
    const values: Record<string, unknown> = {};
    for (const path of select) {
      const [first = "", ...rest] = path.split("/");
      const name = first[0]!.toUpperCase() + first.slice(1);
      const value = readMember(object, name);
      values[name] =
        rest.length === 0 ? value : this.properties(value as HostObject, [rest.join("/")]);
    }
    return values;
  }
}
