/** Every character that one of the formats could take for something else, and one of three bytes. */
export const AWKWARD =
  'a/50% of: a, b {0} [c](1) "d" \'e\' & <f> |g| ``h` *i* _j_ \\k @l #1 $m$ ~n~ é\r\n 丹=.tif';
