/** What the flight bench bundles. */
export { DISC_POLARS } from "../../src/core/constants";
export { playsLikeM } from "../../src/core/flight/playsLike";
export { carryM } from "../../src/core/flight/throwing";
export { odexPosition } from "../../test/core/flight/odexFlight";
