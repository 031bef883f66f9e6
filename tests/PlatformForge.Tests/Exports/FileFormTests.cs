using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Json.Schema;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Geometry;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.House;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Files of ours that others read: they have forms of their own, which say all that the program's records say, and a schema.</summary>
public class FileFormTests
{
    private static readonly Lazy<IReadOnlyList<OutputFile>> Files =
        new(() => OutputFiles.Of(HandDossier.Pendlewick(), new() { Pictures = false, Drawings = false }).Files);

    public static TheoryData<string> Names => [.. FileSchemas.All.Keys];

    /// <summary>Records of the program, the forms that stand for them, and what a form leaves out, and why it may.</summary>
    public static TheoryData<Type, Type, string[]> Pairs => new()
    {
        { typeof(DesignCopy), typeof(DesignDocument), [] },
        { typeof(DesignTrack), typeof(DesignTrackForm), [] },
        { typeof(Vehicle), typeof(DesignVehicleForm), [] },
        { typeof(VehiclePart), typeof(DesignPartForm), [] },
        { typeof(DoorSill), typeof(DesignSillForm), [] },
        // Which face of a platform it is follows from where it stands in the file.
        { typeof(DesignPlatform), typeof(DesignPlatformForm), ["IsFurther", "OtherTrack"] },
        { typeof(ClearanceBudget), typeof(DesignBudgetForm), [] },
        { typeof(BudgetLine), typeof(DesignBudgetLine), [] },
        { typeof(RunningPlay), typeof(DesignPlayForm), [] },

        // How the edge was shaped, and where in the project file it was asked for, is not what it is held to; the air asked for is an entry of its budget.
        { typeof(FaceSpec), typeof(DesignFaceForm), ["Key", "Edge", "LeastRadius", "Taper", "Reach", "Running", "WhiteLine", "StartRamp", "EndRamp"] },

        // Only bed, height, margin and nozzle are held against what was printed.
        { typeof(PrinterSpec), typeof(DesignPrinterForm),
            ["Name", "Layer", "FirstLayer", "Walls", "SolidLayers", "Infill", "Pace", "Speeds", "Spacing", "LongestBridge", "Filament", "MeasuredStrip",
                "Key"] },
        { typeof(PrintSpeeds), typeof(SpeedsReport), [] },

        // The air asked for is an entry of the face's budget; the line along the edge is drawn on the plan.
        { typeof(FaceSpec), typeof(FaceReport), ["Key", "Running", "WhiteLine", "StartRamp", "EndRamp"] },
        { typeof(BudgetLine), typeof(BudgetLineReport), [] },
        { typeof(JointOpening), typeof(JointReport), [] },
        { typeof(BodyJoint), typeof(JointKindReport), [] },
        { typeof(OpeningRange), typeof(OpeningReport), [] },
        { typeof(AsBuiltEdge), typeof(AsBuiltReport), [] },
        { typeof(EdgeMeasure), typeof(MeasureReport), [] },
        { typeof(EdgeReading), typeof(ReadingReport), [] },
        { typeof(VehicleRoom), typeof(RoomReport), [] },
        { typeof(DowelCut), typeof(DowelReport), [] },
        { typeof(PrintEstimate), typeof(EstimateReport), [] },
    };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void A_form_says_all_that_its_record_says(Type record, Type form, string[] leftOut)
    {
        string[] Said(Type type) => [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.SetMethod is not null).Select(p => p.Name)
            .Except(["Tool", "Format"]).Order(StringComparer.Ordinal)];
        Assert.Equal<string>(Said(record), Said(form).Concat(leftOut).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_file_holds_forms_and_no_records_of_other_rooms()
    {
        var seen = new HashSet<Type>();
        foreach (var root in new[] { typeof(Manifest), typeof(DesignDocument), typeof(ReportDocument) })
        {
            Walk(root, seen);
        }

        Assert.True(seen.Count > 25);
        Assert.DoesNotContain(seen, t => t.Namespace is { } n && n.StartsWith("PlatformForge.", StringComparison.Ordinal)
            && !n.StartsWith("PlatformForge.Exports.", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_schema_in_presets_is_the_one_that_the_forms_give(string name) =>
        Assert.True(
            FileSchemas.All[name]() == File.ReadAllText(Path.Combine(SourceTree.Root, "presets", name + ".schema.json")).ReplaceLineEndings("\n"),
            $"presets/{name}.schema.json is not what the program makes: a change of the file's form takes a new format number. "
                + $"Run 'dotnet run -c Release --project src/PlatformForge.Cli -- schema {name} > presets/{name}.schema.json'");

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_written_is_valid_by_its_schema_and_nothing_else_is(string name)
    {
        var schema = JsonSchema.FromText(FileSchemas.All[name]());
        string text = Encoding.UTF8.GetString(Bytes(name));
        bool Valid(string json) => schema.Evaluate(JsonDocument.Parse(json).RootElement).IsValid;
        Assert.True(Valid(text));
        Assert.False(Valid(text.Replace("\"format\": ", "\"format\": 1", StringComparison.Ordinal)));
        Assert.False(Valid(text.Replace("\"project\"", "\"projekt\"", StringComparison.Ordinal)));
        Assert.False(Valid("{}"));
    }

    [Fact]
    public void A_report_reads_back_as_it_was_and_one_that_is_not_wholly_known_is_refused()
    {
        byte[] bytes = Bytes("report");
        var read = ReportReader.Read(bytes, "report.json");
        Assert.Equal(bytes, JsonForms.ToBytes(read.Value, ReportJson.Forms.ReportDocument));
        string text = Encoding.UTF8.GetString(bytes);
        foreach (var (old, changed) in new[] { ("\"gauge\"", "\"guage\""), ("\"format\": 2", "\"format\": 1"), ("\"findings\": [", "\"findings\": [null"),
            ("\"grams\"", "\"weight\"") })
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            Assert.Equal("PF7320",
                Assert.Single(ReportReader.Read(Encoding.UTF8.GetBytes(text.Replace(old, changed, StringComparison.Ordinal)), "r").Findings).Code);
        }
    }

    [Theory]
    [InlineData(-17)]
    [InlineData(0)]
    [InlineData(1001)]
    public void A_door_sill_on_the_wrong_side_of_a_vehicles_middle_or_far_from_it_is_told(double from)
    {
        string text = Encoding.UTF8.GetString(Bytes("design"));
        string sill = FormattableString.Invariant($"\"sill\": {{ \"half_width\": {from}, \"height\": 13, \"from_x\": -100, \"to_x\": 100 }}");
        string spoilt = Regex.Replace(text, @"""sill"": (null|\{[^}]*\})", sill);
        Assert.NotEqual(text, spoilt);
        var finding = Assert.Single(DesignForm.Read(Encoding.UTF8.GetBytes(spoilt), "design.json").Findings);
        Assert.Contains(FormattableString.Invariant($"a door sill {from} mm from the middle"), finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_wrong_in_a_file_is_told_in_words_of_the_file(string name)
    {
        string text = Encoding.UTF8.GetString(Bytes(name));
        var random = new Random(7);
        var properties = Regex.Matches(text, @"""(?<key>[a-z_0-9]+)"": (?<value>""[^""]*""|-?[0-9.]+|true|false|null)?").OrderBy(_ => random.Next())
            .DistinctBy(m => m.Groups["key"].Value).Where(m => m.Groups["key"].Value is not ("tool" or "format")).ToArray();
        int told = 0;
        foreach (var property in properties)
        {
            string key = property.Groups["key"].Value, value = property.Groups["value"].Value;
            foreach (string put in (string[])[$"\"{key}_x\": {value}", $"\"{key}\": null, \"{key}\": {value}",
                .. value.Length > 0 ? (string[])[$"\"{key}\": null", $"\"{key}\": {{}}", $"\"{key}\": [null]", $"\"{key}\": 1e999"] : []])
            {
                foreach (var finding in Findings(name, text[..property.Index] + put + text[(property.Index + property.Length)..]))
                {
                    told++;
                    Assert.DoesNotMatch(@"\.NET|System\.|PlatformForge\.|[Tt]ype|constructor|nullab|deserial", finding.Message);
                    Assert.True(finding.Message.Length < 250, finding.Message);
                    Assert.True(!put.StartsWith($"\"{key}_x\"", StringComparison.Ordinal) || finding.Message.Contains(key, StringComparison.Ordinal),
                        finding.Message);
                }
            }
        }

        Assert.True(told > 3 * properties.Length, $"{told} of {properties.Length}");

        static IReadOnlyList<Finding> Findings(string name, string text) => name switch
        {
            "manifest" => ManifestForm.Read(Encoding.UTF8.GetBytes(text), "manifest.json").Findings,
            "design" => DesignForm.Read(Encoding.UTF8.GetBytes(text), "design.json").Findings,
            _ => ReportReader.Read(Encoding.UTF8.GetBytes(text), "report.json").Findings,
        };
    }

    [Fact]
    public void A_folder_of_an_older_format_is_known_as_ours_and_told_apart()
    {
        byte[] old = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Bytes("manifest")).Replace("\"format\": 3", "\"format\": 1", StringComparison.Ordinal));
        Assert.NotEmpty(ManifestForm.ListedFiles(old)!);
        Assert.Contains("but of format 1", Assert.Single(ManifestForm.Read(old, "m").Findings).Message, StringComparison.Ordinal);
        Assert.Null(ManifestForm.ListedFiles("{\"tool\":\"another\",\"files\":[]}"u8));
    }

    private static byte[] Bytes(string name) => name == "manifest"
        ? ManifestForm.ToBytes(OutputFiles.Of(HandDossier.Pendlewick(), new() { Pictures = false, Drawings = false }).Manifest
            with
        { Files = [.. Files.Value.Select(f => new ManifestFile(f.Path, f.Bytes.Length, new string('0', 64)))] })
        : Files.Value.Single(f => f.Path == name + ".json").Bytes;

    private static void Walk(Type type, HashSet<Type> seen)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsGenericType)
        {
            Array.ForEach(type.GetGenericArguments(), t => Walk(t, seen));
        }
        else if (!type.IsEnum && type != typeof(Point2) && type != typeof(RigidTransform)
            && type.Namespace!.StartsWith("PlatformForge", StringComparison.Ordinal) && seen.Add(type))
        {
            foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.SetMethod is not null))
            {
                Walk(property.PropertyType, seen);
            }
        }
    }
}
