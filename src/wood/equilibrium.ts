/** Moisture that wood comes to in air, and the air that keeps it at a moisture. */

const poly = (c: readonly [number, number, number], t: number): number => c[0] + c[1] * t + c[2] * t * t;
export const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
export const fahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;

/** What the equation was fitted to: humidity in %, and 30 to 200 degrees F (Wood Handbook, table 4-2). */
export const HUMIDITY = [0, 95] as const;
export const CELSIUS = [celsius(30), celsius(200)] as const;

type Form = Readonly<Record<'w' | 'k' | 'k1' | 'k2', readonly [number, number, number]>>;
/** Equation 4-5 of the Wood Handbook, FPL-GTR-282, in degrees Celsius. */
const IN_CELSIUS: Form = {
  w: [349, 1.29, 0.0135],
  k: [0.805, 0.000736, -0.00000273],
  k1: [6.27, -0.00938, -0.000303],
  k2: [1.91, 0.0407, -0.000293],
};
/** The same in degrees Fahrenheit; from memory, borne out by all cells of table 4-2. */
const IN_FAHRENHEIT: Form = {
  w: [330, 0.452, 0.00415],
  k: [0.791, 0.000463, -0.000000844],
  k1: [6.34, 0.000775, -0.0000935],
  k2: [1.09, 0.0284, -0.0000904],
};
/** The four figures of the equation at a temperature in Celsius. */
export const sorption = (temperature: number): Readonly<Record<keyof Form, number>> => ({
  w: poly(IN_CELSIUS.w, temperature),
  k: poly(IN_CELSIUS.k, temperature),
  k1: poly(IN_CELSIUS.k1, temperature),
  k2: poly(IN_CELSIUS.k2, temperature),
});

function byForm(form: Form, humidity: number, temperature: number): number {
  const [w, k, k1, k2] = [form.w, form.k, form.k1, form.k2].map((c) => poly(c, temperature)) as [
    number,
    number,
    number,
    number,
  ];
  const x = (k * humidity) / 100;
  return (1800 / w) * (x / (1 - x) + (k1 * x + 2 * k1 * k2 * x * x) / (1 + k1 * x + k1 * k2 * x * x));
}
const inside = (v: number, [low, high]: readonly [number, number]): boolean => v >= low - 1e-9 && v <= high + 1e-9;
function held(humidity: number, temperature: number): void {
  if (!inside(humidity, HUMIDITY)) throw new RangeError(`humidity outside the table: ${humidity} %`);
  if (!inside(temperature, CELSIUS)) throw new RangeError(`temperature outside the table: ${temperature} degrees C`);
}

/**
 * Moisture content (%) that wood comes to in air of `humidity` (0 to 95 %) and `temperature` (degrees C, -1 to 93).
 * Source: Wood Handbook, FPL-GTR-282, equation 4-5 (Hailwood and Horrobin; Simpson 1973). Wood that dries ends a little
 * wetter than wood that takes up; that is left out. RangeError outside what the equation was fitted to.
 */
export function equilibrium(humidity: number, temperature: number): number {
  held(humidity, temperature);
  return byForm(IN_CELSIUS, humidity, temperature);
}
/** The same for a temperature in degrees F, 30 to 200, by the equation's other form. */
export function equilibriumFahrenheit(humidity: number, temperature: number): number {
  held(humidity, celsius(temperature));
  return byForm(IN_FAHRENHEIT, humidity, temperature);
}

/** Steps of halving: 95 % over 2^60 is below what a double holds. */
const STEPS = 60;
/**
 * Humidity (%) of the air that keeps wood at a moisture (%), by halving: the equation rises all the way from 0 to 95 %.
 * RangeError where that moisture is not reached within the table.
 */
export function humidityFor(moisture: number, temperature: number): number {
  let [low, high] = [HUMIDITY[0], HUMIDITY[1]] as [number, number];
  if (!(moisture >= 0 && moisture <= equilibrium(high, temperature)))
    throw new RangeError(`moisture outside the table: ${moisture} %`);
  for (let i = 0; i < STEPS; i++) {
    const middle = (low + high) / 2;
    if (equilibrium(middle, temperature) < moisture) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
