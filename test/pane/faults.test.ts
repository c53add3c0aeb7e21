/** What goes wrong around the pane: nothing is lost, and a sentence says what happened. */
import { add, start, takeBackLast } from "../../src/pane/field/actions";
import { PaneDesk } from "../../src/pane/controller";
import { firstState, Store } from "../../src/pane/state";
import { PortError } from "../../src/workbook/port";
import { starterPort } from "./starterBook";

const TODAY = 46400;

async function opened(port = starterPort(), today = () => TODAY) {
  const desk = new PaneDesk(new Store(firstState("field")), port, { today });
  await desk.refresh();
  return { desk, port, rows: () => port.tables.get("Throws")?.rows ?? [] };
}

const type = (desk: PaneDesk, carry: string) =>
  desk.change((state) => ({ ...state, session: { ...state.session!, carry } }));

test("a sheet deleted under a session: the carry stays in the box, and the reason is said", async () => {
  const { desk, port } = await opened();
  start(desk, TODAY);
  type(desk, "301");
  port.tables.delete("Throws");
  await add(desk);
  expect(desk.state.session!.carry).toBe("301");
  expect(desk.state.notices.field).toMatchObject({ tone: "fault" });
  expect(desk.state.notices.field!.text).toMatch(/Throws/);
});

test("storage full: the throw is not in the sheet, stays in the box, and goes in later", async () => {
  const { desk, port, rows } = await opened();
  const before = rows().length;
  start(desk, TODAY);
  type(desk, "301");
  port.failNext = new PortError("failed", "There is no room left to save. Nothing was written.");
  await add(desk);
  expect(rows()).toHaveLength(before);
  expect(desk.state.notices.field!.text).toMatch(/no room left/);
  await add(desk);
  expect(rows()).toHaveLength(before + 1);
});

test("two panes at once: both throws are kept, and each takes back only its own", async () => {
  const first = await opened();
  const second = await opened(first.port);
  const before = structuredClone(first.rows());
  for (const [pane, carry] of [
    [first, "301"],
    [second, "255"],
  ] as const) {
    start(pane.desk, TODAY);
    type(pane.desk, carry);
    await add(pane.desk);
  }
  expect(first.rows()).toHaveLength(before.length + 2);
  await takeBackLast(first.desk);
  expect(first.rows().map((row) => row[2])).toEqual([...before.map((row) => row[2]), 255]);
  await takeBackLast(second.desk);
  expect(first.rows()).toEqual(before);
});

test("a clock that jumps in mid-session: every throw keeps the day of the session", async () => {
  let now = TODAY;
  const { desk, rows } = await opened(starterPort(), () => now);
  start(desk, TODAY);
  for (const carry of ["301", "255"]) {
    type(desk, carry);
    await add(desk);
    now -= 400;
  }
  expect(
    rows()
      .slice(-2)
      .map(([day]) => day),
  ).toEqual([TODAY, TODAY]);
});

test("a pane closed before its Enter was written leaves the sheet whole", async () => {
  const { desk, port, rows } = await opened();
  const before = structuredClone(rows());
  start(desk, TODAY);
  type(desk, "301");
  const writing = add(desk);
  const reopened = await opened(port);
  await writing;
  await reopened.desk.refresh();
  const added = reopened.rows().length - before.length;
  expect(added).toBe(1);
  expect(reopened.rows().slice(0, before.length)).toEqual(before);
});
