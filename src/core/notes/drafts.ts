/** What one line of notes says, before names are looked up and units settled. */
import { LONGEST_CARRY_M, MOST_POWER } from "../constants";
import { messages } from "../messages";
import { type DistanceUnit, toMetres } from "../units";
import { isMissOf } from "./bind";
import { isLine, isRemark, type NumberPiece, type Piece, type SidePiece } from "./pieces";

export interface DraftSide {
  readonly value: number;
  /** null where none was written. */
  readonly unit: DistanceUnit | null;
  /** Right positive. */
  readonly direction: -1 | 1;
}

export interface DraftThrow {
  readonly carry: NumberPiece;
  side: DraftSide | null;
  power: number | null;
  line: string;
  readonly remarks: string[];
}

/** Throws of one disc; `name` null where the line does not say which. Line and remarks are about all of them. */
export interface DraftDisc {
  readonly name: string | null;
  line: string;
  readonly remarks: string[];
  readonly throws: DraftThrow[];
}

export interface Unread {
  readonly text: string;
  readonly reason: string;
}

export interface DraftLine {
  readonly discs: readonly DraftDisc[];
  /** Words that belong to no throw: a heading, or chatter. */
  readonly words: readonly string[];
  readonly unread: readonly Unread[];
  /** Whether the line has a date that was not read. */
  readonly dated: boolean;
}

// Which pieces of a line belong to which throw.

/** Smaller numbers, in either unit, are counts and not carries. */
const LEAST_CARRY = 10;

/** Groups the pieces of a line, names before their numbers, into throws by disc. */
export const draftLine = (pieces: readonly Piece[], unit: DistanceUnit): DraftLine =>
  new LineDrafter(pieces, unit).drafted();

class LineDrafter {
  private readonly discs: DraftDisc[] = [];
  private readonly words: string[] = [];
  private readonly unread: Unread[] = [];
  /** What stands before the throw or disc that it is about. */
  private remarksAhead: string[] = [];
  private sideAhead: (DraftSide & { readonly text: string }) | null = null;
  private powerAhead: { readonly share: number; readonly text: string } | null = null;
  private dated = false;

  constructor(
    private readonly pieces: readonly Piece[],
    private readonly unit: DistanceUnit,
  ) {}

  drafted(): DraftLine {
    this.pieces.forEach((piece, index) => this.take(piece, index));
    for (const ahead of [this.sideAhead, this.powerAhead]) {
      if (ahead) this.unread.push({ text: ahead.text, reason: messages.notes.noCarry() });
    }
    return {
      discs: this.discs,
      words: [...this.words, ...this.remarksAhead],
      unread: this.unread,
      dated: this.dated,
    };
  }

  private get disc(): DraftDisc | undefined {
    return this.discs[this.discs.length - 1];
  }

  private get lastThrow(): DraftThrow | undefined {
    return this.disc?.throws[this.disc.throws.length - 1];
  }

  private take(piece: Piece, index: number): void {
    if (piece.kind === "disc") this.startDisc(piece.disc.disc);
    else if (piece.kind === "words") this.takeWords(piece.text, index);
    else if (piece.kind === "number") this.takeNumber(piece);
    else if (piece.kind === "side") this.takeSide(piece, index);
    else if (piece.kind === "power") this.takePower(piece.share, piece.text);
    else if (piece.kind === "remark") this.remark(piece.text);
    else if (piece.kind === "date") this.takeDate(piece.text);
    else if (piece.kind === "unclear") this.unread.push({ text: piece.text, reason: piece.reason });
  }

  private startDisc(name: string | null): DraftDisc {
    const disc = { name, line: "", remarks: this.remarksAhead, throws: [] };
    this.remarksAhead = [];
    this.discs.push(disc);
    return disc;
  }

  private takeWords(text: string, index: number): void {
    const about = this.lastThrow ?? this.disc;
    const next = this.pieces.slice(index + 1).find(({ kind }) => NAMES_AND_NUMBERS.has(kind));
    const namesNext = next?.kind === "number" && !isRemark(text) && !(this.disc && !this.lastThrow);
    if (about && isLine(text)) about.line = text.toLowerCase();
    else if (namesNext) this.startDisc(text);
    else if (about) about.remarks.push(text);
    else if (next) this.remarksAhead.push(text);
    else this.words.push(text);
  }

  private takeNumber(piece: NumberPiece): void {
    const last = this.lastThrow;
    if (piece.sign !== 0 && last?.side === null && isMissOf(piece, last.carry)) {
      last.side = { value: piece.value, unit: piece.unit, direction: piece.sign };
      return;
    }
    const metres = toMetres(piece.value, piece.unit ?? this.unit);
    if (piece.value < LEAST_CARRY || metres > LONGEST_CARRY_M) {
      this.unread.push({ text: piece.text, reason: messages.notes.notCarry() });
      return;
    }
    const disc = this.disc ?? this.startDisc(null);
    disc.throws.push({
      carry: piece,
      side: this.sideAhead,
      power: this.powerAhead?.share ?? null,
      line: "",
      remarks: [],
    });
    this.sideAhead = null;
    this.powerAhead = null;
  }

  private takeSide({ text, value, unit, direction }: SidePiece, index: number): void {
    if (value === null) return;
    const last = this.lastThrow;
    const next = this.pieces[index + 1];
    const side = { value, unit, direction, text };
    if (last?.side === null && isMissOf(side, last.carry)) last.side = side;
    else if (next?.kind === "number" && isMissOf(side, next)) this.sideAhead = side;
    else this.unread.push({ text, reason: messages.notes.noCarry() });
  }

  private takePower(share: number, text: string): void {
    const last = this.lastThrow;
    if (share <= 0 || share > MOST_POWER)
      this.unread.push({ text, reason: messages.notes.badPower() });
    else if (last?.power === null) last.power = share;
    else this.powerAhead = { share, text };
  }

  private takeDate(text: string): void {
    this.dated = true;
    this.unread.push({ text, reason: messages.notes.dateInside() });
  }

  private remark(text: string): void {
    const about = this.lastThrow ?? this.disc;
    if (text !== "") (about?.remarks ?? this.remarksAhead).push(text);
  }
}

const NAMES_AND_NUMBERS: ReadonlySet<Piece["kind"]> = new Set(["disc", "words", "number"]);
