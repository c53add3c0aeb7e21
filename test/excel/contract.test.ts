import { portContract } from "../workbook/contract";
import { openExcel } from "./support/openExcel";

portContract(
  "Excel",
  async () => {
    const { host, port } = openExcel();
    return {
      port,
      calculated: async () => {},
      close: () => expect(host.unknown).toEqual([]),
    };
  },
  { calculates: false },
);
