/** Listening to Excel: registered, told once a tick, registered anew, and given back. */
import { HostError } from "./support/hostObject";
import { openExcel } from "./support/openExcel";

const settle = (ms = 30): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

test("hears what the player types, once for many changes", async () => {
  const { host, port } = openExcel();
  let told = 0;
  const stop = port.onChange(() => (told += 1));
  await settle();
  expect(host.heard).toEqual(["added", "calculated", "changed", "deleted"]);
  host.type("Mine", 1, 1, 5);
  host.type("Mine", 2, 1, 6);
  for (let wait = 0; told === 0 && wait < 100; wait++) await settle();
  await settle();
  expect(told).toBeGreaterThan(0);
  expect(told).toBeLessThanOrEqual(2);
  stop();
  await settle();
  expect(host.heard).toEqual([]);
  expect(host.unknown).toEqual([]);
});

test("two listeners do not get in each other's way", async () => {
  const { host, port } = openExcel();
  const told = { first: 0, second: 0 };
  const stop = port.onChange(() => (told.first += 1));
  const stopSecond = port.onChange(() => (told.second += 1));
  await settle();
  host.type("Mine", 1, 1, 5);
  await settle();
  expect([told.first, told.second].every((count) => count > 0)).toBe(true);
  stop();
  stopSecond();
});

test("tries again where Excel refuses at first", async () => {
  const { host, port } = openExcel();
  host.refuse = (name) => {
    if (!name.includes("_Register")) return null;
    host.refuse = () => null;
    return new HostError("GeneralException", "not now");
  };
  const stop = port.onChange(() => {});
  await settle();
  expect(host.heard).toEqual([]);
  await settle(700);
  expect(host.heard).toContain("changed");
  stop();
});

test("registers anew when the page comes into view again", async () => {
  const page = Object.assign(new EventTarget(), { visibilityState: "visible" });
  Object.assign(globalThis, { document: page });
  try {
    const { host, port } = openExcel();
    let told = 0;
    const stop = port.onChange(() => (told += 1));
    await settle();
    host.forget();
    host.type("Mine", 1, 1, 5);
    await settle();
    expect(told).toBe(0);
    page.dispatchEvent(new Event("visibilitychange"));
    await settle(60);
    expect(host.heard).toContain("changed");
    expect(told).toBe(1);
    stop();
  } finally {
    Reflect.deleteProperty(globalThis, "document");
  }
});

test("says nothing while the pane is closed, and once what happened meanwhile when it opens", async () => {
  const { host, port } = openExcel();
  const told = { changed: 0, shown: 0 };
  const stops = [port.onChange(() => (told.changed += 1)), port.onShown(() => (told.shown += 1))];
  await settle();
  host.library.showPane(false);
  for (let row = 1; row < 9; row++) {
    host.type("Mine", row, 1, row);
    await settle(5);
  }
  expect(told).toEqual({ changed: 0, shown: 0 });
  host.library.showPane(true);
  await settle();
  expect(told).toEqual({ changed: 1, shown: 1 });
  host.library.showPane(false);
  host.library.showPane(true);
  await settle();
  expect(told).toEqual({ changed: 1, shown: 2 });
  stops.forEach((stop) => stop());
  await settle();
});
