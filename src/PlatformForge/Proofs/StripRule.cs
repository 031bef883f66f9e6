using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>What a strip of 100 mm may have measured on this printer.</summary>
public static class StripRule
{
    /// <summary>Farther off than this, mm in 100, it is seldom the plastic: shrinkage that is told of usual plastics is below it (common practice, no
    /// source).</summary>
    private const double Usual = 1;

    /// <summary>Errors, warnings and notes of the printer's measured strip; none where none is stated.</summary>
    public static IReadOnlyList<Finding> Check(PrinterSpec printer)
    {
        if (printer.MeasuredStrip is not { } strip)
        {
            return [];
        }

        string key = printer.Key + ".strip";
        if (!IsStrip(strip.X) || !IsStrip(strip.Y))
        {
            double wrong = IsStrip(strip.X) ? strip.Y : strip.X;
            string likely = wrong is > 3.7 and < 4.2 ? " It may be in inches: these are given in mm." : wrong is > 9.5 and < 10.5
                ? " It may be in cm: these are given in mm."
                : wrong is > 107 and < 113 or > 87 and < 93 ? " It is one of the two measures: half the sum of outer and inner is given." : "";
            return
            [
                Finding.Error("PF7500", key, Invariant($"A strip of 100 mm cannot have measured {wrong:0.###} mm.{likely}"),
                    "Give what the strip measured along and across the bed, half the sum of outer and inner measure, in mm "
                        + Invariant($"from {PrinterSpec.LeastStrip:0} to {PrinterSpec.MostStrip:0}, such as strip = [99.7, 100.1]. ")
                        + "A printer farther off has its steps per mm wrong: put that right first."),
            ];
        }

        var by = printer.Stretch;
        var note = Finding.Note("PF7502", key,
            Invariant($"Every piece is written {Percent(by.X)} along the bed's x and {Percent(by.Y)} along its y, so that it comes out true."),
            "Print it as it lies in its file: a slicer that turns it turns the correction with it. Set no shrinkage in the slicer besides.");
        double off = Math.Max(Math.Abs(strip.X - PrinterSpec.StripLength), Math.Abs(strip.Y - PrinterSpec.StripLength));
        return off <= Usual ? [note] : [Finding.Warning("PF7501", key,
            Invariant($"A strip that is {off:0.##} mm off in 100 tells more of the printer than of its plastic."),
            "Measure it again when it is cold, and see whether belts are tight and steps per mm right, before every piece is made to suit it."), note];
    }

    /// <summary>A stretch in words, such as 0.40 % longer.</summary>
    public static string Percent(double by) => Invariant($"{Math.Abs(by - 1) * 100:0.00} % {(by < 1 ? "shorter" : "longer")}");

    private static bool IsStrip(double mm) => mm is >= PrinterSpec.LeastStrip and <= PrinterSpec.MostStrip;
}
