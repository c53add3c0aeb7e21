/**
 * The real Excel client library in Node. It is loaded as the page loads it, into a context with
 * the few things of a browser that it looks for; what it sends goes to a host given here.
 */
import { readFileSync } from "node:fs";
import { createContext, runInContext } from "node:vm";

const FILE = require.resolve("@microsoft/office-js/dist/excel-web-16.00.debug.js");
const SOURCE = readFileSync(FILE, "utf8");

/** A batch of requests as the library sends it. */
export interface RequestBody {
  readonly Actions: readonly ActionInfo[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPathInfo>>;
}

export interface ActionInfo {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: string[]; readonly Top?: number };
}

export interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  /** For each argument the object that it stands for, 0 for a plain value. */
  readonly ReferencedObjectPathIds?: readonly unknown[];
}

export interface ObjectPathInfo {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

export interface ResponseBody {
  readonly Results: readonly { readonly ActionId: number; readonly Value: unknown }[];
  readonly Error?: {
    readonly Code: string;
    readonly Message: string;
    readonly Location: string;
    readonly ActionIndex: number;
  };
}

/** One message from the host: an event, or a call of a custom function. */
export interface HostMessage {
  readonly messageCategory: number;
  readonly messageType: number;
  readonly targetId?: string;
  readonly message: string;
}

export interface Host {
  answer(body: RequestBody, flags: number): Promise<ResponseBody>;
}

export interface OfficeLibrary {
  readonly Excel: typeof Excel;
  readonly Office: typeof Office;
  readonly OfficeExtension: typeof OfficeExtension;
  readonly CustomFunctions: typeof CustomFunctions;
  /** Runs a script in the page of the library. */
  run(script: string): unknown;
  /** Starts the runtime of custom functions, as the page does once it is read. */
  startFunctions(): void;
  /** The player closes the pane or opens it again; its page goes on. */
  showPane(isShown: boolean): void;
  /** Delivers messages of the host to everybody in the library who listens. */
  tell(messages: readonly HostMessage[]): void;
}

/** What Excel 2021 and the oldest supported Excel have; nothing newer. */
export const EXCEL_2021: RequirementSets = {
  ExcelApi: "1.14",
  CustomFunctionsRuntime: "1.3",
  CustomFunctions: "1.7",
  SharedRuntime: "1.1",
  RichApiRuntime: "1.2",
  DelayForCellEdit: "1.1",
};

export type RequirementSets = Readonly<Record<string, string>>;

/** "1.10" comes after "1.9". */
const minorOf = (version: string): number => Number(version.split(".")[1] ?? 0);

const supports =
  (sets: RequirementSets) =>
  (name: string, version = "1.1"): boolean =>
    name in sets && minorOf(version) <= minorOf(sets[name]!);

const element = (): object => ({
  setAttribute() {},
  appendChild() {},
  getElementsByTagName: () => [],
  style: {},
});

/** What office.js has ready before the library comes: the list of functions that a page registers. */
function association(): object {
  const mappings: Record<string, unknown> = {};
  const changed: (() => void)[] = [];
  return {
    mappings,
    onchange: (handler: () => void) => changed.push(handler),
    associate(id: string, fn: unknown) {
      mappings[id.toUpperCase()] = fn;
      changed.forEach((handler) => handler());
    },
  };
}

/** Mark of a host in which the page runs custom functions. */
const RUNS_FUNCTIONS = 2;

function pageContext(whenRead: (() => void)[]): Record<string, unknown> {
  const location = { href: "https://localhost/addin.html", protocol: "https:", search: "" };
  const document = {
    ...{ createElement: element, getElementsByTagName: () => [element()], head: element() },
    ...{ URL: location.href, cookie: "", readyState: "loading" },
    addEventListener: (_name: string, handler: () => void) => whenRead.push(handler),
  };
  const functions = association() as { associate(id: string, fn: unknown): void };
  const OSF = { _OfficeAppFactory: { getHostInfo: () => ({ flags: RUNS_FUNCTIONS }) } };
  const page: Record<string, unknown> = {
    ...{ console, setTimeout, clearTimeout, setInterval, clearInterval, performance, URL },
    ...{ location, document, navigator: { userAgent: "", platform: "" }, external: {}, OSF },
    CustomFunctions: { _association: functions, associate: functions.associate },
    ...{ addEventListener() {}, removeEventListener() {} },
  };
  return Object.assign(page, { window: page, self: page });
}

/** Loads the library afresh and connects it with a host. */
export function loadLibrary(host: Host, sets: RequirementSets = EXCEL_2021): OfficeLibrary {
  const whenRead: (() => void)[] = [];
  const page = pageContext(whenRead);
  const context = createContext(page);
  runInContext(SOURCE, context, { filename: FILE });
  const listeners = new Set<(args: { entries: readonly HostMessage[] }) => unknown>();
  /* eslint-disable @typescript-eslint/no-explicit-any -- inside of the library, which no type describes */
  const inside = page as any;
  inside.OSF.DDA = Object.assign(inside.OSF.DDA ?? {}, {
    RichApi: {
      richApiMessageManager: { register: async (heard: never) => void listeners.add(heard) },
    },
  });
  const lookers = new Set<(message: { visibilityMode: string }) => void>();
  const addin = {
    onVisibilityModeChanged: async (looker: (message: { visibilityMode: string }) => void) => {
      lookers.add(looker);
      return async () => void lookers.delete(looker);
    },
  };
  // Its own `context` cannot be set from outside, so the page gets an Office that stands before it.
  inside.Office = Object.create(inside.Office, {
    context: { value: { requirements: { isSetSupported: supports(sets) } } },
    addin: { value: addin },
    HostType: { value: { Excel: "Excel" } },
    onReady: { value: (ready: (info: object) => void) => ready({ host: "Excel" }) },
  });
  // The check of requirement sets that the library can do and does not by itself.
  inside.OfficeExtension.CommonUtility._doApiNotSupportedCheck = true;
  inside.OfficeExtension.ClientRequestContext.defaultRequestUrlAndHeaders = {
    _resolveRequestUrlAndHeaderInfo: () => Promise.resolve(null),
    _createRequestExecutorOrNull: () => ({
      executeAsync: async (_data: unknown, flags: number, message: { Body: RequestBody }) => ({
        ...{ HttpStatusCode: 200, ErrorCode: null, ErrorMessage: null, Headers: {} },
        Body: await host.answer(JSON.parse(JSON.stringify(message.Body)), flags),
      }),
    }),
  };
  return {
    ...inside,
    run: (script) => runInContext(script, context),
    startFunctions: () => whenRead.forEach((handler) => handler()),
    showPane: (isShown) =>
      lookers.forEach((look) => look({ visibilityMode: isShown ? "Taskpane" : "Hidden" })),
    tell: (messages) =>
      listeners.forEach((heard) => heard({ entries: structuredClone(messages) as never })),
  };
}
