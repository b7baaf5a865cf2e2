/** US cents, always whole. */
export type Cents = number;
