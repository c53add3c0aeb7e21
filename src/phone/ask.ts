/** Questions to the player, one at a time, in a dialog of the browser's own. */
import type { Questions } from "./files";
import type { CellValue } from "../workbook/port";

interface Choice<Answer> {
  readonly label: string;
  readonly answer: Answer;
}

function ask<Answer>(text: string, choices: readonly Choice<Answer>[]): Promise<Answer | null> {
  return new Promise((resolve) => {
    const dialog = document.createElement("dialog");
    const question = document.createElement("p");
    question.id = "question";
    question.textContent = text;
    dialog.setAttribute("aria-labelledby", question.id);
    let answer: Answer | null = null;
    const buttons = [...choices, { label: "Cancel", answer: null }].map((choice) => {
      const button = document.createElement("button");
      button.textContent = choice.label;
      button.addEventListener("click", () => {
        answer = choice.answer;
        dialog.close();
      });
      return button;
    });
    dialog.append(question, ...buttons);
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(answer);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}

const shown = (value: CellValue): string =>
  value === "" ? "blank" : typeof value === "object" ? value.error : String(value);

export const questions: Questions = {
  merge: (name) =>
    ask(`This phone has changes that are not in ${name}.`, [
      { label: "Merge them into it", answer: "merge" as const },
      { label: "Open the file without them", answer: "open" as const },
    ]),
  setting: ({ label, onPhone, inFile }) =>
    ask(
      label === "Putting"
        ? "The putting table was changed here and in the file."
        : `${label} was changed here and in the file.`,
      label === "Putting"
        ? [
            { label: "Use this phone's", answer: "phone" as const },
            { label: "Use the file's", answer: "file" as const },
          ]
        : [
            { label: `This phone: ${shown(onPhone)}`, answer: "phone" as const },
            { label: `The file: ${shown(inFile)}`, answer: "file" as const },
          ],
    ),
};
