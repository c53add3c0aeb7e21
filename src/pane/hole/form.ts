/** What stands in the boxes of Hole, as typed. */
export interface HoleForm {
  /** Row of the course that filled the boxes; "" for none. */
  readonly from: string;
  readonly sight: "level" | "line";
  readonly distance: string;
  readonly rise: string;
  readonly range: string;
  readonly angle: string;
  readonly windBy: "felt" | "forecast" | "eye";
  readonly headwind: string;
  readonly speed: string;
  readonly windFrom: string;
  readonly bearing: string;
  /** Force of the Beaufort scale, as text. */
  readonly force: string;
  /** Where the seen wind comes from: degrees to the right of the target, as text. */
  readonly side: string;
  readonly longTrouble: string;
  readonly shortTrouble: string;
  readonly line: string;
}

export const EMPTY_HOLE: HoleForm = {
  from: "",
  sight: "level",
  distance: "",
  rise: "",
  range: "",
  angle: "",
  windBy: "felt",
  headwind: "",
  speed: "",
  windFrom: "",
  bearing: "",
  force: "0",
  side: "0",
  longTrouble: "",
  shortTrouble: "",
  line: "",
};
