using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Reading;
using PlatformForge.Projects.Schemas;
using PlatformForge.Tests.House;
using Xunit;

namespace PlatformForge.Tests.Projects;

public class SchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Draft6(ProjectSchema.Write()));

    public static TheoryData<string> Projects() => [.. PresetShelf.SampleNames, "starting file", "small"];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Every_project_of_ours_is_valid_by_the_schema(string name)
    {
        var results = Schema.Evaluate(Json(TextOf(name)), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join("\n", (results.Details ?? []).Where(d => d.Errors is not null)
            .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))));
    }

    [Theory]
    [InlineData("rail_top = 8", "rail_top = -8")]
    [InlineData("rail_top = 8", "rail_topp = 8")]
    [InlineData("side = \"left\"", "side = \"port\"")]
    [InlineData("straight = 900", "straight = true")]
    [InlineData("width = 34", "width = 0")]
    [InlineData("running = 0.7", "")]
    public void What_the_reader_refuses_the_schema_refuses(string sound, string wrong)
    {
        string text = Samples.Small.Replace(sound, wrong);
        Assert.False(Samples.Read(text).Succeeded);
        Assert.False(Schema.Evaluate(Json(text)).IsValid);
    }

    [Fact]
    public void The_shipped_schema_is_the_one_the_key_model_writes()
    {
        string path = Path.Combine(SourceTree.Root, "presets", "project.schema.json");
        Assert.Equal(ProjectSchema.Write(), File.ReadAllText(path));
    }

    [Fact]
    public void The_starting_file_reads_without_fault_and_holds_every_key_of_the_model()
    {
        string text = StartingFile.Write();
        Samples.Sound(text);
        string uncommented =
            string.Join('\n', text.Split('\n').Select(l => l.StartsWith("# ", StringComparison.Ordinal)
                && (l.Contains(" = ", StringComparison.Ordinal) || l.Contains("# [", StringComparison.Ordinal))
                && !l.Contains("{ straight = 250 }", StringComparison.Ordinal) ? l[2..] : l));
        var read = Samples.Read(uncommented);
        Assert.DoesNotContain(read.Findings, f => f.Code is "PF1005" or "PF1006" or "PF1007" or "PF1008");
    }

    private static string TextOf(string name) => name switch
    {
        "starting file" => StartingFile.Write(),
        "small" => Samples.Small,
        _ => PresetShelf.Sample(name)!,
    };

    private static JsonElement Json(string toml) => JsonSerializer.SerializeToElement(Json(TreeReader.Read(toml, "x").Value!));

    private static JsonNode Json(TreeNode node) => node switch
    {
        TreeNumber n => JsonValue.Create(n.Value),
        TreeText t => JsonValue.Create(t.Value),
        TreeFlag f => JsonValue.Create(f.Value),
        TreeList l => new JsonArray([.. l.Items.Select(Json)]),
        TreeTable t => new JsonObject(t.Entries.Select(e => KeyValuePair.Create<string, JsonNode?>(e.Name, Json(e.Value)))),
        _ => JsonValue.Create("a date"),
    };

    /// <summary>The checking library begins at draft 6, which differs from draft 4 only in how open bounds are written, as far as our schema goes.</summary>
    private static string Draft6(string draft4)
    {
        var root = JsonNode.Parse(draft4)!.AsObject();
        root["$schema"] = "http://json-schema.org/draft-06/schema#";
        Open(root);
        return root.ToJsonString();

        static void Open(JsonNode? node)
        {
            if (node is JsonObject table)
            {
                if (table["exclusiveMinimum"] is JsonValue flag && flag.TryGetValue(out bool open) && open)
                {
                    table["exclusiveMinimum"] = table["minimum"]!.DeepClone();
                    table.Remove("minimum");
                }

                foreach (var inner in table.ToArray())
                {
                    Open(inner.Value);
                }
            }
            else if (node is JsonArray list)
            {
                foreach (var item in list)
                {
                    Open(item);
                }
            }
        }
    }
}
