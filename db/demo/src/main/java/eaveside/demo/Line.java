package eaveside.demo;

/** The service lines, with the least that each costs on a visit, in dollars. */
enum Line {
    ARRAYS("Solar arrays", 120),
    SKYLIGHTS("Skylights", 60),
    WINDOWS("Windows", 90),
    ROOFS("Roofs and gutters", 240);

    final String title;
    final int minimum;

    Line(String title, int minimum) {
        this.title = title;
        this.minimum = minimum;
    }
}
