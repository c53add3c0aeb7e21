/** What the page says where it cannot work: it explains itself instead of failing. */
const REASONS = {
  outside: [
    "This page is an add-in for Excel.",
    "It works inside a workbook: in Excel for Windows, for Mac and on the web. Add it there with the file manifest.xml.",
  ],
  unreachable: [
    "Excel's own script could not be loaded.",
    "The add-in needs it from appsforoffice.microsoft.com. Look at the connection, then open the pane again. Your workbook keeps its last values meanwhile.",
  ],
  old: [
    "This Excel is too old for Carrybook.",
    "It needs Excel 2021, Excel of Microsoft 365, or Excel on the web. The sheets keep their last values in any Excel.",
  ],
} as const;

function element(name: string, text: string): HTMLElement {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

/** The manifest for download, and the workbook in the browser where it is hosted beside this page. */
function links(): HTMLElement {
  const list = element("p", "");
  for (const [address, text] of [
    ["manifest.xml", "manifest.xml"],
    ["page/", "Try the same workbook in the browser"],
  ] as const) {
    const link = document.createElement("a");
    link.href = address;
    link.textContent = text;
    list.append(link, document.createElement("br"));
  }
  return list;
}

export function explainOutside(place: HTMLElement, reason: keyof typeof REASONS): void {
  const [title, sentence] = REASONS[reason];
  place.replaceChildren(element("h1", title), element("p", sentence), links());
  place.hidden = false;
}
