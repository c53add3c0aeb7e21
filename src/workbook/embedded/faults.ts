/** The sentence behind an error cell. The engine keeps only the code, so the sentences stand here, by cell. */
export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export class FaultMessages {
  private readonly sentences = new Map<string, string>();

  /** Notes the sentence of the latest calculation of a cell; none clears it. */
  note(place: CellPlace, sentence: string | undefined): void {
    const key = keyOf(place);
    if (sentence === undefined) this.sentences.delete(key);
    else this.sentences.set(key, sentence);
  }

  at(place: CellPlace): string | undefined {
    return this.sentences.get(keyOf(place));
  }
}

const keyOf = ({ sheetId, row, column }: CellPlace): string => `${sheetId}:${row}:${column}`;
