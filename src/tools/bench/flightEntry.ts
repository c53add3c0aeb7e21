/** What the flight bench bundles. */
export { DISC_POLARS } from "../../core/constants";
export { playsLikeM } from "../../core/flight/playsLike";
export { carryM } from "../../core/flight/integrator";
export { odexPosition } from "../../../test/core/flight/odexFlight";
