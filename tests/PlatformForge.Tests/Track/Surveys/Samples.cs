using System.Runtime.CompilerServices;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>The sample surveys that ship with the program, and short ways to state a survey.</summary>
internal static class Samples
{
    public static string Text(string name, [CallerFilePath] string here = "")
    {
        var folder = new DirectoryInfo(File.Exists(here) ? Path.GetDirectoryName(here)! : AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "PlatformForge.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("The source tree was not found above the test.");
        }

        return File.ReadAllText(Path.Combine(folder.FullName, "presets", "samples", "survey", name));
    }

    public static SurveySource Source(string text, LengthUnit? unit = LengthUnit.Millimetre, string file = "survey.csv", MeasuredLine? measured = null) =>
        new(file, text, measured ?? MeasuredLine.Centre, unit);

    public static PointsSpec Points(string text, LengthUnit? unit = LengthUnit.Millimetre, double error = 0.25) =>
        new("up", "track[0].points", [Source(text, unit)], error);

    public static OffsetsSpec Offsets(string text, double error = 0.25, Hand side = Hand.Right) =>
        new("up", "track[0].offsets", [Source(text)], error, new(0, 0), 0, side);

    public static VersinesSpec Versines(string text, ClosingChord? closing = null, double chord = 200, double error = 0.25) =>
        new("up", "track[0].versines", [Source(text)], error, chord, new(0, 0), 0, Closing: closing);

    public static DrawingSpec Drawing(string text, DrawingFormat format, string? element = null, LengthUnit? unit = null, Calibration? calibration = null) =>
        new("up", "track[0].drawing", [Source(text, file: "plan")], 0.1, format, element, unit, calibration);
}
