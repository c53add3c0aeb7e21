/** The pane without a screen: what its actions write, and what it says when they cannot. */
import { add, again, skip, start, takeBackLast } from "../../src/pane/field/actions";
import { addNotes } from "../../src/pane/notes/actions";
import { understand } from "../../src/pane/notes/model";
import { build, fillWithStarter } from "../../src/pane/setup/actions";
import { addResult, toggle, useFactors } from "../../src/pane/course/actions";
import { planOf } from "../../src/pane/course/model";
import { PaneDesk } from "../../src/pane/controller";
import { firstState, Store } from "../../src/pane/state";
import { emptyBlueprint } from "../../src/workbook/blueprint";
import { PortError } from "../../src/workbook/port";
import { MemoryPort } from "../support/memoryPort";
import { starterPort } from "./starterBook";

const TODAY = 46400;
const options = { today: () => TODAY };

async function opened(port = starterPort()) {
  const desk = new PaneDesk(new Store(firstState("field")), port, options);
  await desk.refresh();
  return { desk, port, rows: () => port.tables.get("Throws")!.rows };
}

const type = (desk: PaneDesk, carry: string) =>
  desk.change((state) => ({ ...state, session: { ...state.session!, carry } }));

test("a throw is in the sheet once Enter is pressed, and the next disc comes up", async () => {
  const { desk, rows } = await opened();
  const before = rows().length;
  start(desk, TODAY);
  type(desk, "301");
  await add(desk);
  expect(rows()).toHaveLength(before + 1);
  expect(rows().at(-1)!.slice(0, 3)).toEqual([TODAY, "Olive mid", 301]);
  expect(desk.state.session).toMatchObject({ carry: "", offline: null });
});

test("again marks the last one off and asks for the same disc", async () => {
  const { desk, rows } = await opened();
  start(desk, TODAY);
  type(desk, "301");
  await add(desk);
  await again(desk);
  expect(rows().at(-1)![5]).toBe("off");
  expect(desk.state.session!.chosen).toBe("Olive mid");
  await again(desk);
  expect(desk.state.notices.field).toMatchObject({ tone: "fault" });
  expect(rows().filter((row) => row[0] === TODAY && row[5] === "off")).toHaveLength(1);
});

test("undo goes back to the start of the session, and leaves what was there", async () => {
  const { desk, rows } = await opened();
  const before = structuredClone(rows());
  start(desk, TODAY);
  for (const carry of ["301", "250", "222"]) {
    type(desk, carry);
    await add(desk);
  }
  await again(desk);
  for (let at = 0; at < 4; at++) await takeBackLast(desk);
  expect(rows()).toEqual(before);
  await takeBackLast(desk);
  expect(rows()).toEqual(before);
  expect(desk.state.notices.field!.text).toBe("There is nothing to take back.");
});

test("a pane opened again goes on with the session of the day, and can take its throws back", async () => {
  const first = await opened();
  start(first.desk, TODAY);
  type(first.desk, "301");
  await add(first.desk);
  const second = await opened(first.port);
  start(second.desk, TODAY);
  expect(second.desk.state.steps).toHaveLength(1);
  const before = first.rows().length;
  await takeBackLast(second.desk);
  expect(first.rows()).toHaveLength(before - 1);
});

test("a throw that the workbook refuses stays in the box, with the reason in the place", async () => {
  const { desk, port, rows } = await opened();
  const before = structuredClone(rows());
  start(desk, TODAY);
  type(desk, "301");
  port.failNext = new PortError("protected", "The sheet Log is protected.");
  await add(desk);
  expect(rows()).toEqual(before);
  expect(desk.state.session!.carry).toBe("301");
  expect(desk.state.notices.field).toMatchObject({
    tone: "fault",
    text: "The sheet Log is protected.",
  });
  await add(desk);
  expect(rows()).toHaveLength(before.length + 1);
});

test("a second press while the first is being written adds nothing twice", async () => {
  const { desk, rows } = await opened();
  const before = rows().length;
  start(desk, TODAY);
  type(desk, "301");
  await Promise.all([add(desk), add(desk)]);
  expect(rows()).toHaveLength(before + 1);
});

test("not now brings the next disc", async () => {
  const { desk } = await opened();
  start(desk, TODAY);
  skip(desk);
  expect(desk.state.session!.skipped).toEqual(["Olive mid"]);
});

test("an edit in the sheet reaches the pane, and an unchanged sheet changes nothing", async () => {
  const { desk, port } = await opened();
  const { book } = desk.state;
  await desk.refresh();
  expect(desk.state.book).toBe(book);
  port.edit("Throws", 0, "Carry", 290);
  await desk.refresh();
  expect(desk.state.book).not.toBe(book);
  expect(desk.state.book!.raw.course).toBe(book!.raw.course);
});

test("notes are added as one step that can be undone", async () => {
  const { desk, rows } = await opened();
  const before = structuredClone(rows());
  const notes = { ...desk.state.notes, text: "slate putter 211, 219 x\ncopper mid 271 10 left" };
  const read = understand(notes, desk.state.book!, TODAY);
  expect(read.unread).toEqual([]);
  await addNotes(desk, read.rows);
  expect(
    rows()
      .slice(before.length)
      .map((row) => row.slice(0, 6)),
  ).toEqual([
    [TODAY, "Slate putter", 211, "", "", ""],
    [TODAY, "Slate putter", 219, "", "", "off"],
    [TODAY, "Copper mid", 271, -10, "", ""],
  ]);
  const again = understand(notes, desk.state.book!, TODAY);
  expect(again.rows.map(({ double, taken }) => [double, taken])).toEqual([
    [true, false],
    [true, false],
    [true, false],
  ]);
  await desk.undo("notes");
  expect(rows()).toEqual(before);
});

test("a result goes in with the planned disc and power, and the next hole opens", async () => {
  const { desk, port } = await opened();
  const plan = planOf(desk.state.book!);
  if (!plan.ok) throw new Error(plan.why);
  const [first, second] = plan.value;
  toggle(desk, first!.hole.row);
  desk.change((state) => ({ ...state, course: { ...state.course, finish: "-12" } }));
  await addResult(desk, first!, second!.hole.row);
  const { option } = first!.plan;
  expect(port.tables.get("Results")!.rows.at(-1)).toEqual([
    TODAY,
    "",
    1,
    262,
    "",
    2,
    option!.disc,
    option!.power === 1 ? "" : Math.round(option!.power * 100) / 100,
    -12,
    "",
    "",
    "",
  ]);
  expect(desk.state.course.open).toBe(second!.hole.row);
  expect(desk.state.book!.rounds.at(-1)).toMatchObject({ disc: option!.disc });
});

test("learnt factors reach Settings and every answer, and can be taken back", async () => {
  const { desk } = await opened();
  const before = desk.state.book!.settings;
  const written = { uphillFactor: 1.2, headwindFactor: 0.9, headwindSd: 0.3, courseSide: 0.05 };
  await useFactors(desk, { written, settings: before });
  expect(desk.state.book!.settings).toMatchObject({
    ...{ uphillFactor: 1.2, headwindFactor: 0.9, headwindSd: 0.3, courseSideRad: 0.05 },
  });
  await desk.undo("course");
  expect(desk.state.book!.settings).toEqual(before);
});

test("set-up makes what is missing and fills only what is empty", async () => {
  const port = new MemoryPort({ sheets: [] });
  const { desk } = await opened(port);
  await build(desk);
  expect(desk.state.book!.raw.throws).not.toBeNull();
  expect(desk.state.notices.setup!.text).toContain("Made");
  await port.addRows("Bag", [{ Disc: "My own disc" }]);
  await fillWithStarter(desk);
  expect(desk.state.book!.bag.map(({ disc }) => disc)).toEqual(["My own disc"]);
  expect(desk.state.book!.log.throws.length).toBeGreaterThan(50);
  expect(desk.state.book!.settings.player).toBe("Me");
  await desk.undo("setup");
  expect(desk.state.book!.settings.player).toBeNull();
  expect(desk.state.book!.log.throws).toEqual([]);
});

test("a workbook that cannot be read is said, and read again", async () => {
  const port = new MemoryPort(emptyBlueprint());
  const read = port.readTable.bind(port);
  port.readTable = () => Promise.reject(new PortError("busy", "A cell is being edited."));
  const desk = new PaneDesk(new Store(firstState("hole")), port, options);
  await desk.refresh();
  expect(desk.state.unread).toBe("A cell is being edited.");
  port.readTable = read;
  await desk.refresh();
  expect(desk.state).toMatchObject({ unread: null, book: { card: { rows: [] } } });
});

test("the same work is not begun twice while it is under way, other work waits its turn", async () => {
  const { desk } = await opened();
  const ran: string[] = [];
  const work = (name: string) =>
    desk.work("bag", name, async () => {
      ran.push(name);
      return { said: "" };
    });
  const answers = await Promise.all([work("one"), work("one"), work("two")]);
  expect(answers).toEqual([true, false, true]);
  expect(ran).toEqual(["one", "two"]);
  expect(await work("one")).toBe(true);
});

test("a mistake of the program is said to be one, with details to report", async () => {
  const { desk } = await opened();
  await desk.work("bag", "failing", () => Promise.reject(new TypeError("x is undefined")));
  expect(desk.state.notices.bag).toMatchObject({
    tone: "fault",
    details: expect.stringContaining("x is undefined"),
  });
  expect(desk.state.notices.bag!.text).not.toContain("undefined");
  await desk.work("bag", "failing", () => Promise.reject(new PortError("busy", "A cell is open.")));
  expect(desk.state.notices.bag).toEqual({
    tone: "fault",
    text: "A cell is open.",
    canUndo: false,
  });
});
