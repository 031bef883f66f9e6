namespace PlatformForge.Tests.Memories;

/// <summary>Keys that are turned at random, such that a platform comes of it almost always.</summary>
/// <param name="Figures">Keys of figures, and between which values.</param>
/// <param name="Choices">Keys of words, or of what else is written, and which.</param>
internal sealed record TurnedKeys((string Key, double From, double To)[] Figures, (string Key, string[] Words)[] Choices)
{
    /// <summary>Of a plain halt with a fence, a board and ramps.</summary>
    public static TurnedKeys Halt { get; } = new(
    [
        ("platform[0].ramps.end.length", 70, 140), ("platform[0].ramps.start.gradient", 6, 14), ("platform[0].deck.thickness", 1.2, 2.6),
        ("platform[0].deck.width", 50, 66), ("platform[0].deck.crossfall", 60, 200), ("platform[0].height", 11, 13), ("platform[0].coping.slab_length", 9, 20),
        ("platform[0].coping.overhang", 0, 1.5), ("platform[0].ribs.pitch", 24, 40), ("platform[0].face.from", 268, 290), ("platform[0].line.width", 0.6, 1.4),
        ("clearance.running", 0.5, 1.6), ("clearance.print", 0, 0.4), ("platform[0].board[0].at", 570, 615), ("platform[0].board[0].depth", 3, 6),
        ("platform[0].fence.pitch", 26, 40), ("vehicle[0].width", 33, 35.5), ("layout.rail_top", 7, 9), ("printer.margin", 5, 12),
        ("printer.layer", 0.15, 0.25), ("sections.end_wall", 2, 4),
    ],
    [
        ("platform[0].face.edge", ["fitted", "faired", "uniform"]), ("sections.engrave", ["true", "false"]), ("layout.name", ["Pendlewick", "Nether Pendle"]),
    ]);

    /// <summary>Of a wall with courses, piers, a plinth, a batter, downpipes and weep holes (<see cref="FinishedHalts.Walls"/>).</summary>
    public static TurnedKeys Walls { get; } = new(
    [
        ("platform[0].facing.piers.pitch", 32, 60), ("platform[0].facing.piers.width", 5, 7), ("platform[0].facing.piers.projection", 1.1, 1.7),
        ("platform[0].facing.batter", 0, 0.8), ("platform[0].facing.plinth.height", 2, 5), ("platform[0].facing.plinth.projection", 0.4, 0.9),
        ("platform[0].facing.downpipes.diameter", 1.2, 1.7), ("platform[0].facing.downpipes.clip_pitch", 4, 24), ("platform[0].facing.joint", 0.22, 0.3),
        ("platform[0].facing.opening[0].pitch", 24, 40), ("platform[0].height", 11, 13), ("platform[0].deck.thickness", 1.4, 2.2),
    ],
    [
        ("platform[0].facing.bond", ["english", "flemish", "stretcher", "english-garden-wall"]), ("platform[0].facing.gauge", ["metric", "imperial"]),
        ("platform[0].facing.downpipes.at", ["[180.5, 241]", "[174, 252.5]", "[226]"]),
        ("platform[0].facing.piers.joints", ["beside", "between"]), ("platform[0].facing.downpipes.hopper", ["true", "false"]),
        ("platform[0].coping.kind", ["slabs", "bricks"]),
    ]);

    /// <summary>Of a trestle (<see cref="FinishedHalts.Trestle"/>).</summary>
    public static TurnedKeys Trestle { get; } = new(
    [
        ("platform[0].trestle.pitch", 24, 36), ("platform[0].trestle.post", 3.6, 4.4), ("platform[0].trestle.cap", 3, 5),
        ("platform[0].trestle.bearer", 2.4, 3.6), ("platform[0].trestle.brace", 0.9, 1.3), ("platform[0].trestle.pad", 0, 0.5),
        ("platform[0].trestle.knee", 6, 9), ("platform[0].ramps.end.gradient", 6, 10),
        ("platform[0].deck.thickness", 1.4, 2.2), ("platform[0].height", 11, 13),
    ],
    [
        ("platform[0].trestle.kind", ["timber", "concrete"]), ("platform[0].trestle.braces", ["cross", "single", "web", "none"]),
        ("platform[0].trestle.longitudinal", ["none", "cross", "raking", "knee"]), ("platform[0].trestle.braced", ["both", "front", "back"]),
        ("platform[0].trestle.ramps", ["bents", "walls"]), ("platform[0].trestle.boarded", ["none", "front", "back"]),
    ]);
}
