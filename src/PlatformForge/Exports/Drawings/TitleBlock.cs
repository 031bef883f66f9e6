using static System.FormattableString;

namespace PlatformForge.Exports.Drawings;

/// <summary>The frame and the strip along the bottom that every drawing has: whose it is, what it is, to what scale, and the caution.</summary>
internal static class TitleBlock
{
    public const double Margin = 7;
    public const double Depth = 19;

    /// <summary>Room between the paper's edge and what is drawn.</summary>
    public const double Inset = 14;

    /// <summary>What every drawing warns of.</summary>
    public const string Caution = "For model railways only. Push every vehicle through by hand before anything is fixed.";

    /// <summary>Draws it; <paramref name="notes"/> are two short lines at most.</summary>
    public static void Draw(Sheet sheet, Dossier dossier, string platform, string drawing, string scale, params IReadOnlyList<string> notes)
    {
        double top = sheet.Height - Margin - Depth, right = sheet.Width - Margin;
        sheet.Box(Margin, Margin, sheet.Width - (2 * Margin), sheet.Height - (2 * Margin), null, HouseStyle.Outline);
        sheet.Line(new(Margin, top), new(right, top), HouseStyle.Outline);
        double first = Margin + ((right - Margin) * 0.36), second = Margin + ((right - Margin) * 0.66);
        sheet.Line(new(first, top), new(first, top + Depth), HouseStyle.Thin);
        sheet.Line(new(second, top), new(second, top + Depth), HouseStyle.Thin);

        double x = Margin + 4;
        sheet.Text(platform, new(x, top + 7.2), Fitting(platform, HouseStyle.Heading, first - x - 3));
        sheet.Text(drawing, new(x, top + 12), HouseStyle.Label);
        sheet.Text(Caution, new(x, top + 16.4), Fitting(Caution, HouseStyle.Small, first - x - 3));

        sheet.Text(scale, new(first + 4, top + 6.6), HouseStyle.Strong);
        for (int i = 0; i < notes.Count; i++)
        {
            sheet.Text(notes[i], new(first + 4, top + 11.2 + (4.4 * i)), Fitting(notes[i], HouseStyle.Small, second - first - 7));
        }

        string made = Invariant($"Model of 1:{Figures.Short(dossier.Scale.Ratio)}, gauge {Figures.Short(dossier.Gauge)} mm");
        sheet.Text(dossier.Project, new(second + 4, top + 6.6), Fitting(dossier.Project, HouseStyle.Strong, right - second - 7));
        sheet.Text(made, new(second + 4, top + 11.2), Fitting(made, HouseStyle.Small, right - second - 7));
        string source = Invariant($"PlatformForge {dossier.Version}, input {dossier.InputHash[..Math.Min(12, dossier.InputHash.Length)]}");
        sheet.Text(source, new(second + 4, top + 15.6), Fitting(source, HouseStyle.Small, right - second - 7));
    }

    /// <summary>The style, made smaller where the words would not fit.</summary>
    public static TextStyle Fitting(string text, TextStyle style, double room)
    {
        double length = TextStyle.Length(text, style);
        return length <= room ? style : style with { Size = style.Size * room / length };
    }
}
