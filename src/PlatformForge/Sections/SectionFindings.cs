using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Sections;

/// <summary>All messages of the room.</summary>
internal static class SectionFindings
{
    /// <param name="key">Key at fault.</param>
    /// <param name="piece">Chainages of the piece.</param>
    /// <param name="size">Its sides on the bed, mm.</param>
    /// <param name="missing">By how much it is too large at the turn that suits it best, mm.</param>
    /// <param name="longest">Longest piece of this width that would fit, mm.</param>
    /// <param name="widest">Widest piece of this length that would fit, mm.</param>
    /// <param name="margin">Strip kept free, mm.</param>
    public static Finding PieceTooLarge(string key, (double From, double To) piece, (double Length, double Width) size, double missing, double longest, double widest, double margin) => Finding.Error(
        "PF6001",
        key,
        Invariant($"The piece from {piece.From:F1} to {piece.To:F1} mm, with no place for a cut between, measures {size.Length:F1} by {size.Width:F1} mm on the bed and is {missing:F1} mm too large at every turn."),
        Invariant($"As wide as it is it may be {longest:F1} mm long (allow cuts there: shorter coping slabs, ribs or furniture moved); as long as it is, {widest:F1} mm wide. Or use a larger bed than the margin of {margin:F1} mm leaves."),
        FaultKind.DesignRule);

    public static Finding PieceTooTall(string key, double from, double to, double tall, double height) => Finding.Error(
        "PF6002",
        key,
        Invariant($"The piece from {from:F1} to {to:F1} mm stands {tall:F1} mm high in its print pose; the printer takes {height:F1} mm."),
        Invariant($"Lower the platform by {tall - height:F1} mm, or print it in another pose or on a taller printer."),
        FaultKind.DesignRule);

    public static Finding LongestTooShort(string key, double from, double to, double longest) => Finding.Error(
        "PF6003",
        key + ".longest",
        Invariant($"Sections are to be {longest:F1} mm long at most, but between {from:F1} and {to:F1} mm there is no place for a cut."),
        Invariant($"Allow {to - from:F1} mm, or make the coping slabs shorter."),
        FaultKind.DesignRule);

    public static Finding WallTooThin(string key, string what, double thickness, double least) => Finding.Warning(
        "PF6004",
        key,
        Invariant($"The {what} is {thickness:F2} mm thick, less than two lines of the nozzle."),
        Invariant($"Make it {least:F2} mm or more, or print with a nozzle of {thickness / 2:F2} mm."));

    public static Finding DowelTooLarge(string key, double chainage, double diameter, double largest, string because) => Finding.Error(
        "PF6005",
        key + ".dowel_diameter",
        Invariant($"At the cut at {chainage:F1} mm a dowel of {diameter:F2} mm leaves less than two lines of the nozzle around its bore {because}."),
        largest > 0
            ? Invariant($"The largest that goes in is {largest:F2} mm.")
            : "No dowel goes in there: use joint.kind = \"none\" or raise the platform's height at the cut.",
        FaultKind.DesignRule);

    public static Finding EngravingLeftOut(string key, int section, double largest, double least) => Finding.Note(
        "PF6006",
        key + ".engrave",
        Invariant($"Section {section} is not engraved: its largest clear patch underneath takes letters {largest:F1} mm high, and {least:F1} mm is the least that prints."),
        "Use a shorter name (short_name), a wider rib pitch or fewer longitudinal ribs.");

    public static Finding Unsupported(string key, int section, double area) => Finding.Warning(
        "PF6007",
        key + ".pose",
        Invariant($"Section {section} has {area:F1} mm² flatter than 45 degrees with nothing under it in its print pose."),
        "Let the slicer put supports there, or allow a cut at the ramp's head.");

    public static Finding SlenderSection(string key, int section, double length, double width) => Finding.Note(
        "PF6008",
        key,
        Invariant($"Section {section} is {length / width:F1} times as long as it is wide ({length:F0} by {width:F0} mm) and may warp."),
        "Print it with a brim of 5 mm or more.");

    public static Finding FlatCutMissing(string key, int section, double head) => Finding.Note(
        "PF6009",
        key,
        Invariant($"Section {section} holds part of a ramp and part of the level deck, so it prints upright."),
        Invariant($"It would lie flat if the platform could be cut at the ramp's head at {head:F1} mm."));

    public static Finding DeckNotFlat(string key, int section, double lift, double layer) => Finding.Note(
        "PF6010",
        key + ".pose",
        Invariant($"The deck of section {section} is not quite flat, a crossfall on a curve: lying on the bed, part of it stands {lift:F2} mm off, more than half a layer."),
        Invariant($"Print its first layer {Math.Max(layer, lift):F2} mm high or more, or leave the crossfall out (deck.crossfall = 0)."));
}
