/*
 * The flight of src/core/flight once more, in C, as the measure of what the TypeScript costs.
 * Prints the metres of all flights of a batch, and the seconds of the fastest of the batches.
 * Must stay step for step what step.ts and fly.ts do; the bench compares the metres.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static const double GRAVITY = 9.80665, MASS = 0.175, DENSITY = 1.225, RELEASE_HEIGHT = 1.3;
static const double TOLERANCE = 1e-5, FIRST_STEP = 0.05, LONGEST_STEP = 0.5, LONGEST_FLIGHT = 60;
static const double RIGHT_ANGLE = M_PI / 2, STALL = 25 * M_PI / 180, PLATE_DRAG = 1.1;

typedef struct {
  double diameter, lift, lift_slope, least_drag, drag_rise, least_drag_angle;
} Polar;
typedef struct {
  const Polar *polar;
  double grip, cos, sin, headwind, crosswind;
} Craft;
typedef struct {
  double nose, side, top;
} Vector;
typedef struct {
  double time, along, height, side;
  Vector velocity, acceleration;
  double step;
} State;

static const Polar FAIRWAY = {0.211, 0.094, 2.7, 0.0446, 2.19, -1.8 * M_PI / 180};

static double stall_of(double attack) { return attack < 0 ? -STALL : STALL; }
static double plate_share(double attack) { return (fabs(attack) - STALL) / (RIGHT_ANGLE - STALL); }

static double attached_lift(const Polar *p, double attack) {
  return p->lift + p->lift_slope * attack;
}
static double attached_drag(const Polar *p, double attack) {
  double beyond = attack - p->least_drag_angle;
  return p->least_drag + p->drag_rise * beyond * beyond;
}
static double lift_at(const Polar *p, double attack) {
  if (fabs(attack) <= STALL) return attached_lift(p, attack);
  return attached_lift(p, stall_of(attack)) * cos(RIGHT_ANGLE * plate_share(attack));
}
static double drag_at(const Polar *p, double attack) {
  if (fabs(attack) <= STALL) return attached_drag(p, attack);
  double at_stall = attached_drag(p, stall_of(attack));
  return at_stall + (PLATE_DRAG - at_stall) * sin(RIGHT_ANGLE * plate_share(attack));
}

static Vector accelerate(const Craft *c, Vector v) {
  double in_plane = sqrt(v.nose * v.nose + v.side * v.side) + 1e-9;
  double tilt = v.top / in_plane;
  double attack = -atan(tilt);
  double strength = c->grip * in_plane * sqrt(1 + tilt * tilt);
  double lift = lift_at(c->polar, attack), drag = drag_at(c->polar, attack);
  double braking = strength * (drag + lift * tilt);
  Vector a = {-braking * v.nose - GRAVITY * c->sin, -braking * v.side,
              strength * (lift * in_plane - drag * v.top) - GRAVITY * c->cos};
  return a;
}

static Vector moved(Vector v, double share, Vector by) {
  Vector sum = {v.nose + share * by.nose, v.side + share * by.side, v.top + share * by.top};
  return sum;
}

static double step(const State *from, State *to, const Craft *c, double h) {
  Vector v = from->velocity, a1 = from->acceleration;
  double half = h / 2, sixth = h / 6;
  Vector a2 = accelerate(c, moved(v, half, a1));
  Vector a3 = accelerate(c, moved(v, half, a2));
  Vector a4 = accelerate(c, moved(v, h, a3));
  double nose = h * (v.nose + sixth * (a1.nose + a2.nose + a3.nose));
  double side = h * (v.side + sixth * (a1.side + a2.side + a3.side));
  double top = h * (v.top + sixth * (a1.top + a2.top + a3.top));
  to->time = from->time + h;
  to->along = from->along + c->cos * nose - c->sin * top - h * c->headwind;
  to->height = from->height + c->sin * nose + c->cos * top;
  to->side = from->side + side + h * c->crosswind;
  Vector end = {v.nose + sixth * (a1.nose + 2 * (a2.nose + a3.nose) + a4.nose),
                v.side + sixth * (a1.side + 2 * (a2.side + a3.side) + a4.side),
                v.top + sixth * (a1.top + 2 * (a2.top + a3.top) + a4.top)};
  to->velocity = end;
  to->acceleration = accelerate(c, end);
  Vector off = moved(a4, -1, to->acceleration);
  return (h / 10) * sqrt(off.nose * off.nose + off.side * off.side + off.top * off.top);
}

static void advance(const State *from, State *to, const Craft *c) {
  double h = from->step;
  for (;;) {
    double error = step(from, to, c, h);
    double room = 0.9 * sqrt(sqrt(TOLERANCE / error));
    double next = h * fmax(0.1, fmin(2, room));
    if (!(error > TOLERANCE)) {
      to->step = fmin(LONGEST_STEP, next);
      return;
    }
    h = next;
  }
}

static double climb(const State *s, const Craft *c) {
  return c->sin * s->velocity.nose + c->cos * s->velocity.top;
}

/* How far a throw carries on level ground. */
static double carry(double speed, double elevation) {
  Craft c = {&FAIRWAY, 0, cos(elevation), sin(elevation), 0, 0};
  c.grip = DENSITY * (M_PI / 4) * FAIRWAY.diameter * FAIRWAY.diameter / (2 * MASS);
  State one = {0}, two = {0}, *here = &one, *next = &two;
  Vector released = {speed, 0, 0};
  here->height = RELEASE_HEIGHT;
  here->step = FIRST_STEP;
  here->velocity = released;
  here->acceleration = accelerate(&c, released);
  do {
    if (here->time > LONGEST_FLIGHT) return -INFINITY;
    advance(here, next, &c);
    State *passed = here;
    here = next;
    next = passed;
  } while (here->height > 0 || climb(here, &c) >= 0);
  for (int cut = 0; cut < 8 && fabs(here->height) >= 1e-9; cut++) {
    step(here, here, &c, -here->height / climb(here, &c));
  }
  return here->along;
}

static double seconds(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return now.tv_sec + now.tv_nsec * 1e-9;
}

int main(int count, char **words) {
  int flights = atoi(words[1]), batches = count > 2 ? atoi(words[2]) : 1;
  double metres = 0, best = INFINITY;
  for (int batch = 0; batch < batches; batch++) {
    double start = seconds();
    metres = 0;
    for (int i = 0; i < flights; i++) {
      metres += carry(15 + i % 16, (2 + i / 16 % 13) * M_PI / 180);
    }
    best = fmin(best, seconds() - start);
  }
  printf("{\"metres\": %.9f, \"seconds\": %.9f}\n", metres, best);
  return 0;
}
