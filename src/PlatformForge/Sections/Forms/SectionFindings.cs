using PlatformForge.Platforms.Surfaces;
using PlatformForge.Units;
using PlatformForge.Units.Specs;
using static System.FormattableString;

namespace PlatformForge.Sections.Forms;

/// <summary>All messages of the room.</summary>
internal static class SectionFindings
{
    /// <summary>Brim for a long and narrow piece, mm (common practice, no published source).</summary>
    public const double SlenderBrim = 5;

    /// <summary>A figure that its key in a file would not take.</summary>
    public static Finding OutOfRange(string key, StrayFigure figure) => Finding.Error(
        "PF6050",
        key,
        Invariant($"{key[(key.LastIndexOf('.') + 1)..]} is {figure.Value:0.####}{(figure.Unit.Length > 0 ? " " + figure.Unit : "")}."),
        $"Give a number {figure.Range.InWords(figure.Unit)}.").Curing(double.IsNaN(figure.Value) ? null : Cure.Set(key, figure.Range.Nearest(figure.Value)));

    /// <summary>A piece with no place for a cut in it that the bed does not take; the worst of them.</summary>
    /// <param name="printer">The printer.</param>
    /// <param name="piece">Chainages of the worst piece.</param>
    /// <param name="count">How many pieces between places for a cut are too large, and of how many.</param>
    /// <param name="size">Its sides on the bed, mm.</param>
    /// <param name="missing">By how much it is too large at the turn that suits it best, mm.</param>
    /// <param name="longest">Longest piece of this width that would fit, mm; 0 when none.</param>
    /// <param name="widest">Widest piece of this length that would fit, mm; 0 when none.</param>
    public static Finding PieceTooLarge(
        PrinterSpec printer, (double From, double To) piece, (int TooLarge, int All) count, (double Length, double Width) size, double missing, double longest,
        double widest)
    {
        double across = printer.Bed.Max(p => p.X) - printer.Bed.Min(p => p.X), deep = printer.Bed.Max(p => p.Y) - printer.Bed.Min(p => p.Y);
        string what = count.TooLarge == 1 ? "A piece does" : Invariant($"{count.TooLarge} of {count.All} pieces between places for a cut do");
        return Finding.Error(
            "PF6001",
            printer.Key,
            Invariant($"{what} not fit on the bed of {across:0.#} by {deep:0.#} mm. The largest, from {piece.From:F1} to {piece.To:F1} mm, ")
                + Invariant($"measures {size.Length:F1} by {size.Width:F1} mm and is {missing:F1} mm too large at every turn."),
            Invariant($"It would fit on a bed of this shape that measures {Up(across + missing):0.#} by {Up(deep + missing):0.#} mm, of ")
                + Invariant($"which {printer.Margin:0.#} mm are kept free all round (margin).{Smaller(longest, widest)}"),
            FaultKind.DesignRule).Curing(printer.Bed.Count == 4 ? new Cure(
                CureAct.Set,
                printer.Key + ".bed",
                Invariant($"[{Up(across + missing)}, {Up(deep + missing)}]")) : null);
    }

    private static string Smaller(double longest, double widest) => (longest >= LeastPiece, widest >= LeastPiece) switch
    {
        (true, true) => Invariant($" On this bed it may be {longest:F1} mm long if it stays so wide (shorter coping slabs, or furniture moved, allow more ")
            + Invariant($"cuts), or {widest:F1} mm wide if it stays so long."),
        (true, false) => Invariant($" On this bed it may be {longest:F1} mm long: shorter coping slabs, or furniture moved, allow more cuts."),
        (false, true) => Invariant($" On this bed it may be {widest:F1} mm wide: make the deck narrower."),
        _ => " On this bed neither a shorter nor a narrower one fits.",
    };

    // A size to use is never rounded to one that is too small.
    private static double Up(double size) => Math.Ceiling(size * 10) / 10;

    // Dowels thinner than this, mm, are not taken.
    private const double LeastDowel = 0.5;

    // Rounding of sums, mm.
    private const double Grain = Tolerances.Rounding;

    // Pieces smaller than this, mm, are no help to anybody.
    internal const double LeastPiece = 5;

    public static Finding PieceTooTall(string key, double from, double to, double tall, double height) => Finding.Error(
        "PF6002",
        key,
        Invariant($"The piece from {from:F1} to {to:F1} mm stands {tall:F1} mm high in its print pose; the printer takes {height:F1} mm."),
        Invariant($"Lower the platform by {Up(tall - height):0.#} mm, print it in another pose, or use a printer that takes {Up(tall):0.#} mm (height)."),
        FaultKind.DesignRule).Curing(Cure.Set(key + ".height", Up(tall)));

    public static Finding LongestTooShort(string key, double from, double to, double longest) => Finding.Error(
        "PF6003",
        key + ".longest",
        Invariant($"Sections are to be {longest:F1} mm long at most, but between {from:F1} and {to:F1} mm there is no place for a cut."),
        Invariant($"Allow {Up(to - from):0.#} mm or more, or make the coping slabs shorter."),
        FaultKind.DesignRule).Curing(Up(to - from));

    public static Finding WallTooThin(string key, string what, double thickness, double least) => Finding.Warning(
        "PF6004",
        key,
        Invariant($"The {what} is {thickness:F2} mm thick, less than two lines of the nozzle."),
        Invariant($"Make it {Math.Ceiling((least - Grain) * 100) / 100:F2} mm or ")
            + Invariant($"more{(thickness >= 0.2 ? Invariant($", or print with a nozzle of {Math.Floor((thickness + Grain) * 50) / 100:F2} mm") : "")}."))
            .Curing(Math.Ceiling((least - Grain) * 100) / 100);

    public static Finding DowelTooLarge(
        string key,
        double chainage,
        double diameter,
        double largest,
        string because,
        JointSpec? plates = null) => Finding.Error(
        "PF6005",
        key + ".dowel_diameter",
        Invariant($"At the cut at {chainage:F1} mm a dowel of {diameter:F2} mm leaves less than two lines of the nozzle around its bore {because}."),
        (largest >= LeastDowel ? Invariant($"The largest that goes in is {Math.Floor((largest + Grain) * 100) / 100:F2} mm") : "No dowel goes in there")
        + (plates is { } p
            ? Invariant($": use {key}.kind = \"plate\", two strips of {p.PlateWidth:0.##} by {p.PlateThickness:0.##} mm let in from underneath, which goes in ")
            + "there."
            : largest >= LeastDowel ? "." : Invariant($": use {key}.kind = \"none\" or raise the platform's height at the cut.")),
        FaultKind.DesignRule).Curing(
            plates is not null ? Cure.Text(key + ".kind", "plate")
            : largest >= LeastDowel ? Cure.Set(key + ".dowel_diameter", Math.Floor((largest + Grain) * 100) / 100)
            : Cure.Text(key + ".kind", "none"));

    /// <param name="key">Key of the joint.</param>
    /// <param name="chainage">Of the cut, mm.</param>
    /// <param name="bore">Diameter of the dowel, and what the bore is wider, mm.</param>
    /// <param name="loosest">Largest fit with which it goes in, mm.</param>
    public static Finding FitTooLarge(string key, double chainage, (double Dowel, double Fit) bore, double loosest) => Finding.Error(
        "PF6005",
        key + ".fit",
        Invariant($"At the cut at {chainage:F1} mm a bore {bore.Fit:F2} mm wider than its dowel of {bore.Dowel:F2} mm leaves less than two lines of the ")
            + "nozzle around it: a fit is what the bore is wider.",
        Invariant($"Give {key}.fit, or fits.dowel where that states it, as the coupon tells: {new JointSpec().Fit:0.##} is ")
            + Invariant($"usual, {Math.Floor((loosest + Grain) * 100) / 100:F2} the largest that goes in."),
        FaultKind.DesignRule).Curing(Cure.Set(key + ".fit", new JointSpec().Fit));

    public static Finding PlateTooLarge(string key, double chainage, string what, double size, double largest) => Finding.Error(
        "PF6022",
        key,
        Invariant($"At the cut at {chainage:F1} mm a plate of {size:F2} mm {what} leaves less than two lines of the nozzle around its pocket."),
        Math.Floor(largest * 100) / 100 is var most and > 0 ? Invariant($"The largest {what} that goes in is {most:F2} mm.")
            : "No plate goes in there: use kind = \"none\".",
        FaultKind.DesignRule).Curing(Math.Floor(largest * 100) / 100 is var set and > 0 ? Cure.Set(key, set) : null);

    /// <summary>An upright opening that the nozzle closes.</summary>
    /// <param name="key">Key of its size.</param>
    /// <param name="what">What it is, with its verb.</param>
    /// <param name="width">Its width, fit included, mm.</param>
    /// <param name="least">Least width that stays open, mm.</param>
    /// <param name="size">Size of what goes in that gives that width, mm.</param>
    /// <param name="nozzle">Nozzle that leaves it open as it is, mm.</param>
    public static Finding OpeningTooNarrow(string key, string what, double width, double least, double size, double nozzle) => Finding.Warning(
        "PF6021",
        key,
        Invariant($"The {what} {width:F2} mm wide, less than two lines of the nozzle ({least:F2} mm), and closes while it prints."),
        Invariant($"Give {Math.Ceiling((size - Grain) * 100) / 100:0.##} mm or more, print with a nozzle of {Math.Floor(nozzle * 100) / 100:0.##} mm, or ")
            + "drill it after printing.").Curing(Math.Ceiling((size - Grain) * 100) / 100);

    public static Finding EngravingLeftOut(string key, string section, double largest, double least) => Finding.Note(
        "PF6006",
        key + ".engrave",
        Invariant($"{section} is not engraved: its largest clear patch underneath takes letters {largest:F1} mm high, and {least:F1} mm is the least ")
            + "that prints.",
        "Use a shorter name (short_name), a wider rib pitch or fewer longitudinal ribs.");

    public static Finding LettersLeftOut(string key, IReadOnlyList<string> letters, string engraved) => Finding.Note(
        "PF6012",
        key + ".name",
        "The lettering underneath has no drawing "
            + $"of {string.Join(' ', letters.Take(MostLetters))}{(letters.Count > MostLetters ? " …" : "")}; "
            + $"the sections bear {(engraved.Length > 0 ? $"\"{engraved}\"" : "their numbers only")}.",
        "Give a name in plain letters if that is to be read there.");

    // More letters than this are not listed.
    private const int MostLetters = 8;

    /// <param name="key">Key of the sections.</param>
    /// <param name="section">Its name.</param>
    /// <param name="area">All of it, mm².</param>
    /// <param name="largest">The largest patch, mm², the chainage of its middle, and what of the platform is there; null where nothing is.</param>
    /// <param name="pose">How the section stands, and why where something made it.</param>
    /// <param name="cut">What is told of cuts that let the section lie flat; null where it does so as it is.</param>
    public static Finding Unsupported(
        string key,
        string section,
        double area,
        (double Area, double Chainage, string? What) largest,
        string pose,
        (string Words, Cure? Cure)? cut)
    {
        string message = Invariant($"{section} has {area:F1} mm² flatter than 45 degrees with nothing under it as it prints, {pose}; the largest ")
            + Invariant($"place, {largest.Area:F1} mm², is about chainage {largest.Chainage:F0} mm{(largest.What is { } what ? $", at the {what}" : "")}.");
        return area < WorthSupport
            ? Finding.Note("PF6007", key + ".pose", message, "So small a place droops a little and needs no support.")
            : Finding.Warning("PF6007", key + ".pose", message, cut is { } told ? told.Words : "Let the slicer put supports there.").Curing(cut?.Cure);
    }

    /// <param name="key">Key of the deck's width.</param>
    /// <param name="width">The width, mm.</param>
    /// <param name="count">Sections.</param>
    /// <param name="longest">The longest of them, mm.</param>
    /// <param name="bed">Sides of the bed, mm.</param>
    /// <param name="wanted">Half as many.</param>
    /// <param name="narrow">Greatest width that takes no more than those, mm; null when none does.</param>
    /// <param name="larger">Sides of the least bed of the same shape that does; null when none does.</param>
    public static Finding WiderThanBed(
        string key,
        double width,
        int count,
        double longest,
        (double Across, double Deep) bed,
        int wanted,
        double? narrow,
        (double Across, double Deep)? larger)
    {
        string cures = string.Join(", or ", new[]
        {
            narrow is { } w ? Invariant($"a width of {w:0.#} mm or less") : "",
            larger is { } b ? Invariant($"a bed of {b.Across:0.#} by {b.Deep:0.#} mm or more") : "",
        }.Where(c => c.Length > 0));
        return Finding.Warning(
            "PF6040",
            key,
            Invariant($"The platform is {width:0.#} mm wide, and so lies across the bed of {bed.Across:0.#} by {bed.Deep:0.#} mm: that makes {count} sections ")
                + Invariant($"of {longest:F1} mm at most, shorter than wide."),
            cures.Length > 0 ? Invariant($"Tried: {cures} takes {wanted} or fewer.") : "").Curing(narrow is { } value ? Cure.Set(
                key,
                value) with
            { Tried = true } : null);
    }

    // A square of 2 mm: less than that is not worth a support. Common practice, no source.
    private const double WorthSupport = 4;

    public static Finding SlenderSection(string key, string section, double length, double width) => Finding.Note(
        "PF6008",
        key,
        Invariant($"{section} is {length / width:F1} times as long as it is wide ({length:F0} by {width:F0} mm) and may warp."),
        Invariant($"Print it with a brim of {SlenderBrim:0.#} mm or more."));

    /// <param name="key">Key of the sections.</param>
    /// <param name="section">Its name.</param>
    /// <param name="upright">How it stands.</param>
    /// <param name="cut">What is told of cuts that let it lie flat.</param>
    public static Finding FlatCutMissing(string key, string section, bool upright, (string Words, Cure? Cure) cut) => Finding.Note(
        "PF6009",
        key,
        Invariant($"{section} holds part of a ramp and part of the level deck, ")
            + Invariant($"so {(upright ? "it prints upright" : "it lies on the one and the other stands off the bed")}."),
        cut.Words).Curing(cut.Cure);

    /// <summary>A deck on a curve whose planes leave the coping's height or the fall asked by more than is allowed.</summary>
    /// <param name="key">Key of the platform.</param>
    /// <param name="fit">How near they come.</param>
    /// <param name="remedies">What was tried and keeps both: keys with their values.</param>
    public static Finding DeckOffItsHeight(string key, DeckFit fit, IReadOnlyList<(string Words, Cure Cure)> remedies) => Finding.Warning(
        "PF6020",
        key + ".deck.crossfall",
        "A deck with crossfall on a curve is a cone, and every section's top is one plane, to lie flat on the bed: "
            + Invariant($"the coping's edge stands up to {fit.CopingOff:F2} mm off its height, farthest at {fit.CopingAt:F1} mm ")
            + Invariant($"({HingedDeck.CopingAllowance:F2} is allowed), and the fall at the joints is up to {fit.FallOff:F3} mm off the {fit.FallAsked:F2} mm ")
            + Invariant($"asked ({HingedDeck.FallAllowance:F2} is allowed)."),
        remedies.Count > 0 ? "Tried, and within both: " + string.Join(
            ", or ",
            remedies.Select(r => r.Words)) + "." : "Leave the crossfall out (deck.crossfall = 0).")
        .Curing(remedies.Count > 0 ? remedies[0].Cure : Cure.Set(key + ".deck.crossfall", 0));

    /// <summary>A section that its joints would reach out of.</summary>
    /// <param name="key">Key of the joint.</param>
    /// <param name="from">Its start, mm.</param>
    /// <param name="to">Its end, mm.</param>
    /// <param name="room">Its least length, mm.</param>
    /// <param name="needed">Length that its joints need, mm.</param>
    /// <param name="dowel">Longest dowel that would go in, mm; 0 or less when none.</param>
    public static Finding SectionTooShort(string key, double from, double to, double room, double needed, double dowel) => Finding.Error(
        "PF6011",
        key + ".dowel_length",
        Invariant($"The section from {from:F1} to {to:F1} mm is {room:F1} mm long at its shortest, and its joints with their bores and end walls ")
            + Invariant($"need {needed:F1} mm."),
        Math.Floor(dowel * 10) / 10 is var longest and >= LeastPiece
            ? Invariant($"Allow longer sections or move a forced cut, so that it is {Up(needed - room):0.#} mm longer, or make the dowels {longest:0.#} mm ")
            + "long or shorter."
            : Invariant($"Allow longer sections or move a forced cut, so that it is {Up(needed - room):0.#} mm longer."),
        FaultKind.DesignRule).Curing(Math.Floor(dowel * 10) / 10 is var fits and >= LeastPiece ? Cure.Set(key + ".dowel_length", fits) : null);
}
