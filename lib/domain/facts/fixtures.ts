export const FIXTURES = [
  "bathroom-group",
  "water-closet",
  "bathtub",
  "shower",
  "lavatory",
  "kitchen-sink",
  "dishwasher",
  "clothes-washer",
  "laundry-sink",
  "floor-drain",
] as const;

export type Fixture = (typeof FIXTURES)[number];
