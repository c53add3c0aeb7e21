/**
 * Every constant of the model: value, unit, source. The word "assumption" marks a figure
 * that has no published source; each of those is a setting, or stands here to be questioned.
 */

/** Standard gravity, m/s². CGPM 1901; ISO 80000-3. */
export const GRAVITY = 9.80665;

/** Air density at sea level in the standard atmosphere, kg/m³. ISO 2533:1975. */
export const STANDARD_DENSITY = 1.225;

/** Standard atmosphere up to 11 km: sea-level temperature, its fall with height, sea-level pressure, gas constant of dry air. ISO 2533:1975. */
export const STANDARD_TEMPERATURE_K = 288.15;
export const LAPSE_K_PER_M = 0.0065;
export const STANDARD_PRESSURE_PA = 101_325;
/** J/(kg K). */
export const DRY_AIR_GAS_CONSTANT = 287.05287;

/** Radius of the earth that turns geometric into geopotential altitude, m. ISO 2533:1975. */
export const EARTH_RADIUS_M = 6_356_766;

/** Molar mass of water (18.01528 g/mol, IUPAC) over that of dry air (28.96442 g/mol, ISO 2533). */
export const WATER_VAPOUR_SHARE = 18.01528 / 28.96442;

/** Mass of a disc in flight, kg. Assumption: inside the PDGA limits and usual for every type. */
export const DISC_MASS_KG = 0.175;

/** Height of the hand above the ground at release, m. Assumption. */
export const RELEASE_HEIGHT_M = 1.3;

/**
 * Diameter, m, and drag polar of each type of disc: lift CL = lift + liftSlope·α, drag
 * CD = leastDrag + dragRise·(α − leastDragRad)², α in rad. Fairway and distance: fit to the
 * computed polar published with Giljarhus et al. 2022, Sports Engineering,
 * doi 10.1007/s12283-022-00390-5. Putter and midrange: assumption, two thirds and one third
 * of the way from the fairway polar to that of Crowther & Potts 2007, Sports Engineering 10.
 */
export const DISC_POLARS = {
  putter: {
    diameterM: 0.212,
    lift: 0.1179,
    liftSlope: 2.9587,
    leastDrag: 0.0715,
    dragRise: 2.9297,
    leastDragRad: (-2.573 * Math.PI) / 180,
  },
  midrange: {
    diameterM: 0.215,
    lift: 0.1057,
    liftSlope: 2.8273,
    leastDrag: 0.0581,
    dragRise: 2.5593,
    leastDragRad: (-2.166 * Math.PI) / 180,
  },
  fairway: {
    diameterM: 0.211,
    lift: 0.094,
    liftSlope: 2.7,
    leastDrag: 0.0446,
    dragRise: 2.19,
    leastDragRad: (-1.8 * Math.PI) / 180,
  },
  distance: {
    diameterM: 0.211,
    lift: 0.127,
    liftSlope: 2.52,
    leastDrag: 0.0423,
    dragRise: 1.95,
    leastDragRad: (-2.3 * Math.PI) / 180,
  },
} as const;

/** Target distances at which a throw of unstated type is exactly this type, ft; blended between them. Assumption. */
export const TYPE_DISTANCES_FT = {
  putter: 200,
  midrange: 250,
  fairway: 300,
  distance: 350,
} as const;

/** Angle of attack beyond which the polar gives way to a flat plate's, and the plate's drag face on. Assumption. */
export const STALL_RAD = (25 * Math.PI) / 180;
export const PLATE_DRAG = 1.1;

/** Elevations above the slope among which a player finds the farthest. Assumption. */
export const LEAST_ELEVATION_RAD = (2 * Math.PI) / 180;
export const MOST_ELEVATION_RAD = (14 * Math.PI) / 180;

/** Strongest wind, m/s, in which throws are worked out. Assumption: above hurricane force on the Beaufort scale. */
export const STRONGEST_WIND_MPS = 40;

/** Radius of the putting area, m. PDGA Official Rules of Disc Golf, rule 806.01. */
export const CIRCLE_M = 10;

/** Quantile behind every 80 % interval that the product shows. */
export const UPPER_TENTH = 0.9;

/** The same quantile of the normal distribution. Abramowitz & Stegun, table 26.5. */
export const NORMAL_UPPER_TENTH = 1.2815515655446;

/** How long until a throw counts half, days. Assumption; setting "Memory". */
export const MEMORY_DAYS = 180;

/** Usual spread of one disc's smooth carries, as a share of carry. Assumption; setting "Usual spread". */
export const USUAL_SPREAD = 0.07;

/** Usual sideways spread, rad. Assumption; setting "Side spread". */
export const SIDE_SPREAD_RAD = 0.06;

/** Throws that the prior on spread is worth when the bag cannot tell. Assumption. */
export const PRIOR_FREEDOM = 4;

/**
 * What the course adds to the spread of a disc in the field, in quadrature: along, as a share of carry,
 * and sideways, rad. Over the usual spreads 0.07 and 0.06 a factor of 1.45 both ways, fitted to the
 * shares of throws that touring professionals leave within 10 m from 150 to 350 ft (throw data
 * © 2026 PDGA, published with A. Vehtari, "Modeling disc golf putting", 2026-03-12). Settings.
 */
export const COURSE_SPREAD = 0.0735;
export const COURSE_SIDE_RAD = 0.063;

/** Softest throw considered, as a share of smooth, by type of disc; the last where no type is known. Assumption; column Softest of the bag. */
export const SOFTEST_POWER = {
  putter: 0.15,
  midrange: 0.3,
  fairway: 0.8,
  distance: 0.8,
  unknown: 0.8,
} as const;

/** Hardest throw considered, as a share of smooth. Assumption; setting. */
export const HIGHEST_POWER = 1;

/**
 * How much of the modelled effect of rise and air, of a headwind and of a tailwind a player meets
 * before any round, and its standard deviation. Assumption; settings. The sign of a tailwind's effect
 * is not settled by the physics, so that nothing is added for it until rounds say otherwise.
 */
export const PLAYS_LIKE_FACTORS = {
  uphill: { value: 1, sd: 0.3 },
  headwind: { value: 1, sd: 0.5 },
  tailwind: { value: 0, sd: 0.7 },
} as const;

/** Step between the powers that are weighed up, as a share of smooth. */
export const POWER_STEP = 0.01;

/**
 * Spread of ln carry added, in quadrature, for each unit of power away from smooth. Fitted to the shares
 * of approaches from 66 to 200 ft that touring professionals leave within 10 m (source as of
 * COURSE_SPREAD).
 */
export const SOFTNESS_COST = 0.15;

/** Most degrees of freedom of a throw on the course: a tree or a gust stays possible however well a disc is known. Assumption. */
export const MOST_COURSE_FREEDOM = 30;

/** A hole that takes this many strokes or more counts as one that takes this many in the chances of scores. Assumption. */
export const MOST_STROKES = 15;

/** Points of equal chance by which the doubt of a disc's middle is counted in comparing two: sure to about 0.01. */
export const COMPARE_POINTS = 64;

/** How deep trouble in front of the target is, m: a throw that ends before it lays up. Assumption. */
export const FRONT_TROUBLE_DEPTH_M = 20;

/** How far inside the edge the next throw is made from after the disc went out, m. PDGA Official Rules of Disc Golf, rule 806.02. */
export const INSIDE_EDGE_M = 1;

/** How far off the line a player aims away from trouble at the most, m, and by what steps. Assumption. */
export const MOST_AIM_M = 12;
export const AIM_STEP_M = 0.5;

/** How much of the drift by a crosswind is in doubt, a share of it, after the player has aimed off. Assumption. */
export const DRIFT_DOUBT = 0.5;

/** Share of throws on each side, along and across, too wild to count in a mean. Assumption. */
export const WILD_SHARE = 0.001;

/** Holes and leftover distances up to this are answered, m. Assumption. */
export const LONGEST_HOLE_M = 500;

/** Expected strokes closer than this are a tie. Assumption. */
export const STROKES_TIE = 0.005;

/** Chances, or distances in m, closer than this are equal but for rounding. */
export const COST_TIE = 1e-9;

/** Least chance of the circle that is worth choosing by; below it what a throw leaves decides. Assumption. */
export const LEAST_CHANCE = 0.02;

/** A gap is where the best disc falls this far behind an ideal one in the chance of the circle. Assumption. */
export const GAP_LOSS = 0.05;

/** Discs are twins where each is worth less than this in strokes a round, and their carries overlap by more than this share. Assumption. */
export const TWIN_STROKES = 0.02;
export const TWIN_OVERLAP = 0.8;

/** Holes of a round. Common practice, no source. */
export const HOLES_A_ROUND = 18;

/**
 * What is believed of the player's course before any round, as normal beliefs: ln of the carry over the
 * field's; the factors of rise, headwind and tailwind; ln of the course spread (share of carry) and of
 * the course side (rad). Deviations that stand here alone: assumption.
 */
export const COURSE_PRIOR = {
  lnCourseCarry: { value: 0, sd: 0.05 },
  ...PLAYS_LIKE_FACTORS,
  lnCourseSpread: { value: Math.log(COURSE_SPREAD), sd: 0.5 },
  lnCourseSide: { value: Math.log(COURSE_SIDE_RAD), sd: 0.5 },
} as const;

/** What is believed of the player's putting: ln of the angle in degrees, normal; its growth a foot beyond 30 ft, gamma of shape 2 with this scale. Assumption. */
export const PUTTING_PRIOR = {
  lnAngle: { mean: Math.log(1.6), sd: 0.35 },
  growthScale: 0.01,
} as const;

/** Fewer rows that say in or out tell nothing about the chances. Assumption. */
export const LEAST_ROWS_TO_JUDGE = 10;

/** How much a player's carry differs from day to day, a share, until earlier days tell. Assumption. */
export const DAY_SPREAD = 0.04;
/** Bounds of what earlier days may tell, how many of them it takes, and how many throws each. Assumption. */
export const LEAST_DAY_SPREAD = 0.01;
export const MOST_DAY_SPREAD = 0.1;
export const LEAST_DAYS_FOR_SPREAD = 3;
/** A day is judged from so many throws with so many discs. Assumption. */
export const FORM_LEAST_THROWS = 5;
export const FORM_LEAST_DISCS = 3;

/** Tuning of Huber's location estimate: 95 % efficient on normal data. Holland & Welsch 1977, Commun. Stat. A6:813. */
export const HUBER_TUNING = 1.345;

/** Discs with a spread of their own from which the bag itself tells the prior on spread. Assumption. */
export const LEAST_DISCS_FOR_PRIOR = 5;

/** Bounds of the prior's worth in throws when the bag tells it. Assumption. */
export const LEAST_PRIOR_FREEDOM = 2;
export const MOST_PRIOR_FREEDOM = 20;

/** No flight is worked out for a target beyond this, m; twice the longest carry of a log. Assumption. */
export const FARTHEST_TARGET_M = 1000;

/** A throw by hand carries no farther, and no throw worth noting less, m; other numbers are slips. Assumption. */
export const SHORTEST_CARRY_M = 1;
export const LONGEST_CARRY_M = 500;

/** A shorter carry is more often another number of the notes than a throw, m: about 40 ft. Assumption. */
export const LEAST_LIKELY_CARRY_M = 12;

/** A spread on a card that is a smaller share of carry is a slip. Assumption. */
export const LEAST_SPREAD = 1e-6;

/** A larger power in a log is a percentage typed as a plain number, and a smaller one a slip. Assumption. */
export const LEAST_POWER = 0.2;
export const MOST_POWER = 1.5;

/** Putts made by distance, where the player gives no table: feet, share. Assumption. */
export const USUAL_PUTTING_FT = [
  [10, 0.95],
  [15, 0.85],
  [20, 0.7],
  [25, 0.55],
  [33, 0.35],
  [45, 0.15],
  [60, 0.06],
] as const;

/** A disc is called changing from this many throws, over this many days, below this p, beyond this share of carry. Assumption. */
export const TREND_LEAST_THROWS = 5;
export const TREND_LEAST_DAYS = 30;
export const TREND_P = 0.05;
export const TREND_SHARE = 0.03;

/** A trend rests on this many latest throws at most: the slope looks at every pair of them. */
export const TREND_MOST_THROWS = 300;

/** Mean length of a month, days: 365.2425 / 12, Gregorian calendar. */
export const MONTH_DAYS = 365.2425 / 12;

/**
 * Wind at the height of flight as a share of a forecast's, which is for 10 m over open ground: the
 * power law of wind profiles with the usual exponent 1/7, at about 3 m. The height is an assumption.
 */
export const FLIGHT_WIND_SHARE = 0.85;

/** Practice: a throw is worth its while where it adds this to the chance of the circle, and so many of one disc are enough for a day. Assumption. */
export const PRACTICE_GAIN = 0.002;
export const PRACTICE_MOST_THROWS = 10;
