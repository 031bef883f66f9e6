using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>All messages of the room but those of the measured strip.</summary>
internal static class ProofFindings
{
    public static Finding NowhereBeside(string key, double chainage, IEnumerable<ProofFace> faces)
    {
        string where = string.Join("; ", faces.Select(f => Invariant($"{f.Name} from {Math.Ceiling(First(f)):0} to {Math.Floor(Last(f)):0}")));
        var nearest = faces.OrderBy(f => Math.Max(First(f) - chainage, chainage - Last(f))).First();
        double near = Math.Clamp(chainage, Math.Ceiling(First(nearest)), Math.Floor(Last(nearest)));
        return Finding.Error("PF7504", key, Invariant($"A slide gauge cannot stand at chainage {chainage:0.##}: no platform is beside it there."),
            Invariant($"Give a chainage along a platform's track ({where}), such as {near:0}.")).Curing(Cure.Set(key, near));
    }

    /// <summary>First chainage at which a gauge stands wholly beside a face, mm.</summary>
    public static double First(ProofFace face) => face.Plan.Spec.Face.From + EndRoom;

    /// <summary>The last.</summary>
    public static double Last(ProofFace face) => face.Plan.Spec.Face.To - EndRoom;

    // Half a gauge's length and a little, mm.
    private const double EndRoom = 6;

    public static Finding NoBoard(string key, string vehicle, string why, string? instead) => Finding.Error(
        "PF7505", key, Invariant($"No throw board can be made of '{vehicle}': it {why}."), instead is null ? "Name a vehicle that runs on wheels of its own."
            : Invariant($"Name '{instead}' in its place: its board shows what counts."));

    public static Finding TooLarge(string key, string what, Point3 size, double missing) => Finding.Warning(
        "PF7506", key, Invariant($"'{what}' measures {size.X:0.#} by {size.Y:0.#} mm and is {missing:0.#} mm too large for the bed at every turn it may lie ")
            + "at: it is left out.", "Use a larger bed or a smaller margin for it, or do without.");

    public static Finding NoFinger(string key, string platform, double chainage, double room) => Finding.Note(
        "PF7507", key, Invariant($"The slide gauge of {platform} at {chainage:0} carries no finger for the wall's foot: between the sleepers' ends and the ")
            + Invariant($"wall it has {Math.Max(0, room):0.0} mm."),
            "Give sleepers, the width over their ends, if yours are shorter; otherwise set the wall out from the coping.");

    public static Finding AirWithinPlay(ProofSpec spec)
    {
        double least = Math.Ceiling((spec.Play + Beside) * 10) / 10;
        return Finding.Error("PF7508", spec.Key + ".air",
            Invariant($"Slide gauges with a play of {spec.Play:0.##} mm would touch what they measure with only {spec.Air:0.##} mm of air."),
            Invariant($"Give at least {least:0.0} mm of air, or less play.")).Curing(least);
    }

    /// <summary>Air beyond the play that a gauge needs at least, mm.</summary>
    public const double Beside = 0.1;

    public static Finding PlayTooLarge(ProofSpec spec, double gauge)
    {
        double most = Math.Floor(Math.Min(gauge * ProofMaker.MostPlay, spec.Air - Beside) * 100) / 100;
        return Finding.Error("PF7509", spec.Key + ".play",
            Invariant($"Tongues with a play of {spec.Play:0.##} mm on each side would not keep to rails that are {gauge:0.##} mm apart."),
            Invariant($"Give {most:0.##} mm or less.")).Curing(most);
    }

    /// <param name="key">Key of the places.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="chainage">The place.</param>
    /// <param name="left">Width over the tongues there, mm.</param>
    /// <param name="straight">What it would be on straight track.</param>
    /// <param name="nozzle">Bore of the printer's nozzle, mm.</param>
    public static Finding Jams(string key, string platform, double chainage, double left, double straight, double nozzle)
    {
        double least = TonguesInNozzles * nozzle;
        bool isNarrow = straight < least;
        return Finding.Error(
            "PF7510", key,
            Invariant($"The shoe of a slide gauge of {platform} at {chainage:0} would be {Math.Max(0, left):0.0} mm wide between the rails, and a nozzle ")
                + Invariant($"of {nozzle:0.##} mm prints {least:0.0} or more{(isNarrow ? "" : ": the track bends too sharply there")}."),
            isNarrow ? Invariant($"Print gauges with a nozzle of {Math.Floor(straight / TonguesInNozzles * 100) / 100:0.##} mm or less, or with less play.")
                : "Give another chainage, away from the kink.");
    }

    /// <summary>Least width over a gauge's tongues, in bores of the nozzle: two walls of two lines.</summary>
    public const double TonguesInNozzles = 4;

    public static Finding Hangs(string key, string what, double area) => Finding.Warning(
        "PF7511", key, Invariant($"'{what}' has {area:0.#} mm² with nothing under it as it lies on the bed."), "Let the slicer put supports there.");

    public static Finding Unmarked(string key, string what, string mark) => Finding.Note(
        "PF7513", key, Invariant($"'{what}' has no room for its mark {mark}."), Invariant($"Write {mark} on it with a pencil as it comes off the bed."));

    public static Finding Thin(string key, string what, double thickness, double layer) => Finding.Error(
        "PF7512", key, Invariant($"{what} of {thickness:0.##} mm is less than two layers of {layer:0.##} mm."),
            Invariant($"Give {2 * layer:0.##} mm or more.")).Curing(Math.Round(2 * layer, 3));
}
