/** A result on its way into the table Results. */
import type { Hole, Settings } from "../../core/types";
import { fromMetres, fromMps } from "../../core/units";
import type { CellValue, Row } from "../../workbook/port";
import { needNumber } from "../words/numberIn";
import type { CourseForm } from "./form";
import type { Planned } from "./plan";

/** Digits that survive the way through SI and back. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** The row to add; what is missing or unclear is thrown as a sentence. */
export function resultRow(
  form: CourseForm,
  { hole, plan }: Planned,
  settings: Settings,
  today: number,
): Row {
  const disc = form.disc === "" ? plan.option?.disc : form.disc;
  if (!disc) throw new Error("Say which disc it was.");
  const planned = disc === plan.option?.disc ? plan.option.power * 100 : 100;
  const percent = needNumber(form.power, "Power", Math.round(planned));
  if (percent <= 0) throw new Error("Power must be above 0.");
  const metres = (value: number): CellValue => tidy(fromMetres(value, settings.distanceUnit)) || "";
  return {
    Date: today,
    Hole: holeCell(hole),
    Distance: metres(hole.distanceM),
    Rise: metres(hole.riseM),
    Headwind: tidy(fromMps(hole.headwindMps, settings.windUnit)) || "",
    Disc: disc,
    Power: percent === 100 ? "" : percent / 100,
    Finish: needNumber(form.finish, "Finish"),
  };
}

/** A hole's name is a number wherever it looks like one, as in the course itself. */
const holeCell = ({ hole }: Hole): CellValue => (/^\d+$/.test(hole) ? Number(hole) : hole);
