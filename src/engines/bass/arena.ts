/** A fresh array of zeros. */
export type Allocate = (numbers: number) => Float64Array;

export const plainly: Allocate = (numbers) => new Float64Array(numbers);

/**
 * Hands out zeroed stretches of large blocks: thousands of small typed arrays would cost more time than the numbers in
 * them. A block is freed when nothing of it is in use any more.
 */
export const createArena = (blockNumbers: number): Allocate => {
  let block = new Float64Array(0);
  let used = 0;
  return (numbers) => {
    if (numbers > blockNumbers / 4) return new Float64Array(numbers);
    if (used + numbers > block.length) {
      block = new Float64Array(blockNumbers);
      used = 0;
    }
    used += numbers;
    return block.subarray(used - numbers, used);
  };
};
