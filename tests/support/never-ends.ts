/** In the place of a child: says nothing, and is busy until it is ended. */
for (;;) Math.sqrt(2)
