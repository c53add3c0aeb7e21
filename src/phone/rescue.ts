/** A page by itself that gives out what this browser holds, for when the phone page does not open. */
import { BookStore } from "./store";
import { download } from "./download";
import { TableOfBook } from "../workbook/light/lightBook";

const line = document.getElementById("state")!;
const list = document.getElementById("files")!;

function offer(label: string, make: () => File): void {
  const item = document.createElement("li");
  const button = document.createElement("button");
  button.textContent = label;
  button.addEventListener("click", () => download(make()));
  item.append(button);
  list.append(item);
}

const quoted = (value: unknown): string => {
  const text = typeof value === "object" ? "" : String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

async function start(): Promise<void> {
  const store = await BookStore.open();
  const book = await store.find();
  if (!book) {
    line.textContent = "This browser holds no workbook of Carrybook.";
    return;
  }
  const { name, file } = await store.origin();
  line.textContent = `This browser holds ${name}. Save what you need:`;
  for (const { tables } of book.sheets)
    for (const { name: table } of tables) {
      const { headers, rows } = TableOfBook.get(book, table).read();
      const typed = rows.filter((row) => row.some((cell) => cell !== ""));
      offer(`${table} (${typed.length} rows) as .csv`, () => {
        const lines = [headers, ...typed].map((row) => row.map(quoted).join(","));
        return new File([lines.join("\r\n")], `${table}.csv`, { type: "text/csv" });
      });
    }
  offer("Everything as .json", () => {
    const text = JSON.stringify(book);
    return new File([text], "carrybook.json", { type: "application/json" });
  });
  if (file) offer(`${name} as it was opened`, () => new File([Uint8Array.from(file)], name));
}

start().catch((reason: unknown) => {
  line.textContent = `The browser's database could not be read: ${String(reason)}`;
});
