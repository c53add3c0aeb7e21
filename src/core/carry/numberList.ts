/** A list of numbers that grows, without an object a number: a full sheet has a million throws. */
export class NumberList {
  private room = new Float64Array(8);
  private count = 0;

  get length(): number {
    return this.count;
  }

  push(value: number): void {
    if (this.count === this.room.length) {
      const larger = new Float64Array(2 * this.room.length);
      larger.set(this.room);
      this.room = larger;
    }
    this.room[this.count++] = value;
  }

  /** The numbers so far; a view, to be read before the next `push`. */
  view(): Float64Array {
    return this.room.subarray(0, this.count);
  }
}
