import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

describe("what a pipe is made of is a row where it begins, and none where it is told again or of something else", () => {
  const walks = `
  Clay to start with.
  Thirty-one, goes to PVC.
  Thirty-seven, back to clay.
  So that's like six feet of PVC, thirty-one to thirty-seven.
  => material 0; material 31; material 37

  Starts out in cast iron.
  Twelve, here's where the iron quits and it's clay.
  So the iron runs zero to twelve and it's clay the rest of the way.
  => material 0; material 12

  It's concrete here at the house.
  It's concrete for a short way only. Changes to PVC at eleven.
  => material 0; material 11

  Clay, all of it, right off the bat.
  At thirty-three it gets into white plastic.
  And then it goes back to clay at forty-one. So thirty-three to forty-one is the plastic piece.
  => material 0; material 33; material 41

  PVC at the start.
  Twenty-two goes into cast iron.
  So we had PVC from zero to twenty-two.
  => material 0; material 22

  Cast iron going in.
  Fifty-three, clay.
  Yeah, fifty-three, clay, that's the city's piece.
  => material 0; material 53

  Cast iron out of the house.
  Thirteen, that's where your iron stops and you got clay pipe from there on.
  They put a little cement collar around it.
  So clay clay clay, seventeen, eighteen, all good.
  => material 0; material 13

  Clay pipe.
  Twenty-nine, it's changing. Fiber pipe, they were short of iron in the war.
  => material 0; material 29

  Clay to start.
  Twelve feet, now it's iron. Out of the clay and into cast iron.
  => material 0; material 12

  Starts in clay.
  At forty-five we come into cast iron.
  So it's clay up to forty-five and then iron.
  => material 0; material 45

  PVC to start.
  Eighteen, cleanout overhead, you can see the iron lid.
  => material 0; cleanout 18

  It's all clay in here.
  Fourteen, there's a saddle on the right side, white pipe into the clay.
  => material 0; tie-in 14

  Clay to begin.
  Twenty, tap on the left, somebody's PVC saddle on the clay.
  => material 0; tie-in 20

  We're in clay.
  Thirty, tap at two o'clock, and the tap is cast iron, the rest of it's clay.
  => material 0; tie-in 30

  It's black in here, so cast iron? No, it's plastic. ABS.
  Twelve, wye on the left.
  => material 0; tie-in 12

  Cast, I think. No, wait, that's clay, dirty clay.
  Twenty-five, roots.
  => material 0; roots 25

  Clay.
  Sixty-three, the pipe just drops into the city's big brick sewer.
  => material 0

  Plastic here, four inch.
  Nineteen, it changes over to clay. Clay from nineteen on.
  => material 0; material 19

  Cast iron.
  Nine feet, here comes the plastic. They dug that up and put in plastic when they did the porch.
  Thirty, back into the iron.
  => material 0; material 9; material 30

  ABS going in.
  Fifteen, end of the ABS, start of the clay.
  => material 0; material 15

  It's ductile right here, I put a magnet on it.
  It's iron for a short way only. Changes to PVC at eleven.
  => material 0; material 11

  Clay.
  At forty-five we come into cast iron.
  So it's clay up to forty-five and then iron. Forty-five point oh, cast iron.
  => material 0; material 45

  Zero, and it's white PVC, six inch, which makes sense because these were built in nineteen eighty-seven.
  Eight feet, roots.
  => material 0; roots 8

  Concrete.
  Thirty feet, and the pipe's gone from concrete to clay.
  => material 0; material 30

  Clay.
  Forty feet, she's gone over to plastic.
  => material 0; material 40

  PVC.
  Sixty-three feet, it goes to concrete, that's the city's old stub.
  => material 0; material 63

  Cast iron under the house.
  Twelve feet, Fernco, and then it's SDR.
  => material 0; material 12

  PVC from the cleanout.
  Twelve feet, this is where they tied the new pipe on to the old clay.
  => material 0; material 12

  Clay tile.
  Twelve feet, somebody spliced in a piece of plastic.
  Sixteen feet, clay again.
  => material 0; material 12; material 16

  Clay tile.
  Twelve feet, roots, and you can't line cast iron that's this bad, but clay you can.
  => material 0; roots 12

  Clay tile.
  Twelve feet, roots. A PVC line don't get roots.
  => material 0; roots 12

  Clay tile.
  Twelve feet, roots. The whole thing ought to be PVC by now.
  => material 0; roots 12

  Clay tile.
  Twelve feet, roots. Her kitchen stack is cast iron, and that's fine.
  => material 0; roots 12

  PVC.
  Twelve feet, a wye on the right, clay coming into the PVC.
  => material 0; tie-in 12

  It's all the same white pipe.
  Twelve feet, a wye on the right, also PVC.
  => material 0; tie-in 12

  Plastic here.
  Thirty feet, and there's your clay.
  => material 0; material 30

  Plastic here.
  Thirty feet, liner starts.
  Fifty feet, liner ends, back in the bare clay.
  => material 0; material 30; material 50

  He said it's like a hundred feet to the main, counter's zero, it's six inch clay, five feet, good.
  Nine feet, roots.
  => material 0; roots 9

  Orangeburg from the house.
  At fourteen it's clay.
  Forty-four feet, she turns to concrete.
  So new plastic from fourteen feet to forty-four, that's what I'd do.
  => material 0; material 14; material 44
`;

  test.each(walksIn(walks))("$said", expectRows);
});
