DROP TABLE "ErasureMark";
