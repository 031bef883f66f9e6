using PlatformForge.Masonry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>The messages on downpipes.</summary>
internal static class DownpipeFindings
{
    public static Finding BesidePiers(string key, string wall, Cure cure) => Finding.Error(
        "PF4197",
        key + ".facing.downpipes.on",
        Invariant($"Piers and downpipes are asked for on one wall, the {wall}: either would be set back behind the other, ")
            + "and both would stand at each joint between sections.",
        "Put them on different walls, or leave one of them out.",
        FaultKind.DesignRule).Curing(cure);

    public static Finding TooFlat(string key, DownpipeSpec pipes)
    {
        double least = Math.Ceiling(pipes.LeastProjection * 100) / 100;
        return Finding.Error(
            "PF4198",
            key + ".facing.downpipes.projection",
            Invariant($"Downpipes {pipes.Diameter:0.###} mm wide with clips {pipes.Clip:0.###} mm round them ")
                + Invariant($"stand {pipes.Projection:0.###} mm before the wall: less than half of each would be seen."),
            Invariant($"Give {least:0.##} mm or more."),
            FaultKind.DesignRule).Curing(least);
    }

    public static Finding LeftOut(string key, double at, (double From, double To)? room) => Finding.Warning(
        "PF4199",
        key + ".facing.downpipes.at",
        Invariant($"The downpipe at {at:0.##} mm is left out: it would stand beyond the platform's end, between cuts that leave no room, ")
            + "or where the wall is too low for its parts.",
        room is { } r ? Invariant($"Give places from {Math.Ceiling(r.From * 10) / 10:0.#} to {Math.Floor(r.To * 10) / 10:0.#} mm, clear of cuts.")
            : "Give a smaller diameter or clip_height, or leave out hopper and shoe.");

    public static Finding Moved(string key, double at, double to) => Finding.Note(
        "PF4199",
        key + ".facing.downpipes.at",
        Invariant($"The downpipe at {at:0.##} mm would be cut in two by a joint between sections; it stands at {to:0.##} mm, beside the joint."));

    public static Finding Taken(string key, double at, double by) => Finding.Note(
        "PF4199",
        key + ".facing.downpipes.at",
        Invariant($"The downpipe at {at:0.##} mm is the one at {by:0.##} mm: there is no room for two."));
}
