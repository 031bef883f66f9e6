using System.Text;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Painting;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Tables;
using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Exports.Surveys;

/// <summary>A survey's figures as tables: misses of the readings, how far the line may be off, elements, string lining.</summary>
public static class SurveyTables
{
    /// <summary>Every reading with its miss and the figure that would fit, in the unit it was written in.</summary>
    public static byte[] Readings(SurveyedTrack track)
    {
        var csv = new CsvText("file", track.Residuals.Any(r => r.Reading.DrawnAt is not null) ? "point" : "line", "chainage (mm)", "read", "unit",
            track.Versines.Count > 0 ? "miss (mm, left-hand curve positive)" : "miss (mm, left positive)", "would fit", "left out");
        foreach (var r in track.Residuals)
        {
            double unit = r.Reading.Unit.Millimetres();
            csv.Row(r.Reading.File, Invariant($"{r.Reading.Row}"), Figures.Fixed(r.Chainage, 2), Read(r.Reading, unit), r.Reading.Unit.Sign(),
                Figures.Fixed(r.Miss, 3), Fits(r, unit), r.IsOutlier ? "yes" : track.IsInDoubt(r.Reading) ? "in doubt" : "no");
        }

        return csv.ToBytes();
    }

    /// <summary>How far the line may be off along it.</summary>
    public static byte[] Movement(SurveyedTrack track)
    {
        var csv = new CsvText("chainage (mm)", "x (mm)", "y (mm)", "radius (mm, left positive)", "may be off by (mm, 19 surveys in 20)",
            "every reading at its worst, elements as recognised (mm)");
        for (int k = 0; k < track.Movement.Chainages.Count; k++)
        {
            double s = track.Movement.Chainages[k];
            var frame = track.Line.At(s);
            csv.Row(Figures.Fixed(s, 2), Figures.Fixed(frame.Position.X, 3), Figures.Fixed(frame.Position.Y, 3),
                StraightRule.Told(frame.Curvature) == 0 ? "straight" : Figures.Fixed(1 / frame.Curvature, 1), Figures.Fixed(track.Movement.Likely[k], 3),
                Figures.Fixed(track.Movement.Worst[k], 3));
        }

        return csv.ToBytes();
    }

    /// <summary>The string-lining table, for those who want to ease the track instead.</summary>
    public static byte[] Lining(StringLining lining)
    {
        var csv = new CsvText("station (mm)", Invariant($"measured (mm, chord {Figures.Short(lining.Chord)})"), "proposed (mm)", "error (mm)",
            "sum of errors (mm)", "half throw (mm)", "full throw (mm, to the right positive)", "which way", "note");
        foreach (var r in lining.Rows)
        {
            csv.Row(Figures.Fixed(r.Station, 1), Figures.Fixed(r.Measured, 3), Figures.Fixed(r.Proposed, 3), Figures.Fixed(r.Error, 3),
                Figures.Fixed(r.SumOfErrors, 3), Figures.Fixed(r.HalfThrow, 3), Figures.Fixed(r.FullThrow, 3), r.Way, r.Note);
        }

        return csv.ToBytes();
    }

    /// <summary>All files of a survey, named after its track.</summary>
    /// <param name="track">The survey.</param>
    /// <param name="chord">Chord of the string-lining table, mm; shortened where the track is too short for it.</param>
    /// <param name="origin">Up to three short lines for the drawing on whose survey it is.</param>
    public static IReadOnlyList<OutputFile> Files(SurveyedTrack track, double chord, params IReadOnlyList<string> origin)
    {
        string name = FileNames.Plain(track.Line.Name) + "-survey";
        var sheet = SurveyDrawing.Draw(track, origin);
        var files = new List<OutputFile>
        {
            new(name + ".svg", SvgWriter.ToBytes(sheet)),
            new(name + ".png", PngWriter.ToBytes(SheetPainter.Paint(sheet), isDrawing: true)),
            new(name + "-readings.csv", Readings(track)),
            new(name + "-line.csv", Movement(track)),
            new(name + "-string-lining.csv", Lining(StringLining.Of(track, Math.Min(chord, StringLining.LongestChord(track))))),
        };
        if (track.Alignment is not null)
        {
            files.Add(new(name + ".toml", Encoding.UTF8.GetBytes(AlignmentText.Toml(track))));
        }

        return files;
    }

    private static string Read(Reading reading, double unit) => reading switch
    {
        PlaceReading { Ordinate: { } o } => Figures.Short(o.Offset / unit),
        PlaceReading p => Invariant($"{Figures.Short(p.Place.X / unit)} {Figures.Short(p.Place.Y / unit)}"),
        VersineReading v => Figures.Short(v.Written(v.Versine)),
        _ => "",
    };

    private static string Fits(ReadingResidual r, double unit) => r.Fitting is { } fits
        ? Figures.Fixed(r.Reading.Written(fits), 2)
        : r.FittingPlace is { } place ? Invariant($"{Figures.Fixed(place.X / unit, 2)} {Figures.Fixed(place.Y / unit, 2)}") : "";
}
