/** What happened goes into the workbook by a few taps, and can be taken back. */
import { PaneDesk } from "../../src/pane/controller";
import { addPutt, addResult, setCourse, usePutting } from "../../src/pane/course/actions";
import { EMPTY_COURSE, opened, planOf, pressed, resultRow } from "../../src/pane/course/model";
import { puttingInUse } from "../../src/pane/course/putting";
import { forgetForm, useForm } from "../../src/pane/field/actions";
import { formInUse, formIsOld, formOf, formSentence } from "../../src/pane/field/form";
import { firstState, Store, withBook } from "../../src/pane/state";
import type { MemoryPort } from "../support/memoryPort";
import { bookIn, starterPort } from "./starterBook";

const TODAY = 46400;

async function deskOver(port: MemoryPort): Promise<PaneDesk> {
  const store = new Store(withBook(firstState("course"), await bookIn(port)));
  return new PaneDesk(store, port, { today: () => TODAY });
}
async function firstHole(port: MemoryPort) {
  const plan = planOf(await bookIn(port));
  if (!plan.ok) throw new Error(plan.why);
  return plan.value[0]!;
}

test("in or out is enough for a result; the pick is the disc", async () => {
  const port = starterPort();
  const desk = await deskOver(port);
  const hole = await firstHole(port);
  const before = (await bookIn(port)).rounds.length;
  desk.change((state) => ({ ...state, course: opened(EMPTY_COURSE, hole.hole.row) }));
  setCourse(desk, { inCircle: false });
  await addResult(desk, hole, null);
  const rounds = (await bookIn(port)).rounds;
  expect(rounds.length).toBe(before + 1);
  expect(rounds.at(-1)).toMatchObject({
    ...{ day: TODAY, disc: hole.plan.option!.disc, finishM: null, offlineM: null },
    inCircle: false,
  });
  await desk.undo("course");
  expect((await bookIn(port)).rounds.length).toBe(before);
});

test("presses of Short, Long, Left and Right count up; outside, the first lands outside", () => {
  const inside = { ...EMPTY_COURSE, inCircle: true };
  expect(pressed(inside, "finish", -1, "ft")).toBe("-10");
  expect(pressed({ ...inside, finish: "-10" }, "finish", -1, "ft")).toBe("-20");
  const out = { ...EMPTY_COURSE, inCircle: false };
  expect(pressed(out, "finish", 1, "ft")).toBe("40");
  expect(pressed({ ...out, finish: "40" }, "offline", -1, "ft")).toBe("-10");
  expect(pressed(out, "offline", 1, "m")).toBe("12");
});

test("a result that says nothing or contradicts itself is refused with a sentence", async () => {
  const port = starterPort();
  const hole = await firstHole(port);
  const { settings } = await bookIn(port);
  const row = (part: Partial<typeof EMPTY_COURSE>) => () =>
    resultRow({ ...EMPTY_COURSE, ...part }, hole, settings, TODAY);
  expect(row({})).toThrow("Say whether it finished in the circle");
  expect(row({ inCircle: true, finish: "60" })).toThrow("do not agree");
  expect(row({ inCircle: false, finish: "5", offline: "5" })).toThrow("do not agree");
  expect(row({ finish: "x" })).toThrow("Long or short: type a number");
});

test("a tap adds a putt, and the learnt table takes the settings' place until it is taken back", async () => {
  const port = starterPort();
  const desk = await deskOver(port);
  const before = await bookIn(port);
  setCourse(desk, { putt: "20" });
  await addPutt(desk, true);
  const after = await bookIn(port);
  expect(after.putts.length).toBe(before.putts.length + 1);
  expect(after.putts.at(-1)).toMatchObject({ day: TODAY, made: 1, tried: 1 });
  expect(puttingInUse(after)).toBe(false);
  await usePutting(desk);
  const used = await bookIn(port);
  expect(puttingInUse(used)).toBe(true);
  expect(used.settings.putting).not.toEqual(before.settings.putting);
  await desk.undo("course");
  expect((await bookIn(port)).settings.putting).toEqual(before.settings.putting);
});

test("the form of a day is offered, used for picks alone, and asked about on the next day", async () => {
  const port = starterPort();
  const desk = await deskOver(port);
  const before = await bookIn(port);
  const day = Math.max(...before.log.throws.map((thrown) => thrown.day ?? 0));
  const form = formOf(before, day)!;
  expect(formOf(before, day + 1)).toBeNull();
  expect(formSentence({ ...form, factor: 0.97, sd: 0.02, throws: 8 }).replace(/\s/g, " ")).toBe(
    "3 % shorter than your card today (± 2 %, 8 throws).",
  );
  await useForm(desk, form);
  const used = await bookIn(port);
  expect(formInUse(form, used)).toBe(true);
  expect(used.settings).toMatchObject({ todayDay: day });
  expect(used.card).toEqual(before.card);
  expect([formIsOld(used, day), formIsOld(used, day + 1)]).toEqual([false, true]);
  await forgetForm(desk);
  expect((await bookIn(port)).settings.today).toBe(1);
});
