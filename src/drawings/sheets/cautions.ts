import type { Checked } from '../../checks/index.js';

type Caution = Checked['cautions'][number];

/** The cautions that a kind of sheet carries, the gravest first. */
export const cautionsOn = (
  { checks }: { readonly checks?: Checked | undefined },
  where: Caution['on'][number],
): readonly Caution[] => (checks?.cautions ?? []).filter((c) => c.on.includes(where));
