/*
 * An ear for tests: listens to sound with grammars and with a loop over all phones, and prints what it made of both.
 *
 *   ear MODEL DICTIONARY MORE_WORDS PHONE_MODEL FOLDER NAME=GRAMMAR…
 *
 * stdin, for each request one of
 *   hear SAMPLES   and that many 16-bit samples at 16 kHz (in this machine's byte order): a new sound
 *   with WAY NAME  the last sound, with a grammar named at the start
 *   once WAY BYTES and a grammar of that many bytes: the last sound, with that
 * stdout, for each request, one line of JSON: for hear {"frames": n, "loops": [PATH…]} with one path for each way of listening,
 * else PATH: [[word or phone, first frame, last frame, acoustic score]…]
 *
 * The ways of listening differ in what is done to the sound: way 0 takes steady noise out of it, way 1 leaves it in and listens
 * as to a smaller mouth (the model was made from large ones; synthetic voices sound smaller to it).
 * How well every piece of the model fits every frame is worked out once for each way (and kept in FOLDER for a moment); every
 * search goes over that. Scores are logarithms relative to the best piece of the whole model in each frame (compallsen), so
 * that they can be compared between searches. MORE_WORDS holds pronunciations the dictionary lacks.
 */
#define _POSIX_C_SOURCE 200809L
#include <pocketsphinx.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#define WAYS 2
#define MOST_SAMPLES (16000 * 30)
#define MOST_GRAMMAR 65536
#define FOLDER_LENGTH 400

/** One way of listening and what it made of the last sound. */
typedef struct {
  ps_decoder_t *loop;
  char folder[FOLDER_LENGTH];
  char *scores;
  size_t size;
} Way;

static Way ways[WAYS];
static int16 sound[MOST_SAMPLES];
/** Sounds heard; the library names its score files so. */
static unsigned heard;

static int fail(const char *what, const char *which) {
  fprintf(stderr, "ear: %s: %s\n", what, which);
  return 1;
}

static cmd_ln_t *settings(const char *model) {
  return cmd_ln_init(NULL, ps_args(), TRUE, "-hmm", model, "-logfn", "/dev/null", "-compallsen", "yes", "-cmn", "batch",
                     "-bestpath", "no", "-pl_window", "0", NULL);
}

static ps_decoder_t *grammar_decoder(const char *model, const char *dictionary) {
  cmd_ln_t *config = settings(model);
  if (config == NULL) return NULL;
  cmd_ln_set_str_r(config, "-dict", dictionary);
  cmd_ln_set_float_r(config, "-wip", 0.01);
  cmd_ln_set_float_r(config, "-beam", 1e-55);
  cmd_ln_set_float_r(config, "-pbeam", 1e-55);
  cmd_ln_set_float_r(config, "-wbeam", 1e-35);
  return ps_init(config);
}

/** Inverse linear warp of the frequencies for each way. */
static const char *const warps[WAYS] = {"1.1", "1.2"};

static int open_way(Way *way, const char *model, const char *phones) {
  cmd_ln_t *config = settings(model);
  if (config == NULL) return 1;
  mkdir(way->folder, 0700);
  cmd_ln_set_str_r(config, "-senlogdir", way->folder);
  cmd_ln_set_boolean_r(config, "-remove_noise", way == &ways[0]);
  cmd_ln_set_str_r(config, "-warp_type", "inverse_linear");
  cmd_ln_set_str_r(config, "-warp_params", warps[way - ways]);
  cmd_ln_set_str_r(config, "-allphone", phones);
  cmd_ln_set_boolean_r(config, "-allphone_ci", TRUE);
  cmd_ln_set_float_r(config, "-lw", 2.0);
  cmd_ln_set_float_r(config, "-beam", 1e-20);
  cmd_ln_set_float_r(config, "-pbeam", 1e-20);
  way->loop = ps_init(config);
  return way->loop == NULL;
}

static int add_words(ps_decoder_t *ear, const char *path) {
  char line[512];
  FILE *file = fopen(path, "r");
  if (file == NULL) return fail("cannot read", path);
  while (fgets(line, sizeof line, file) != NULL) {
    char *phones = strchr(line, ' ');
    if (phones == NULL) continue;
    *phones++ = '\0';
    phones[strcspn(phones, "\r\n")] = '\0';
    char *known = ps_lookup_word(ear, line);
    if (known != NULL) {
      free(known);
    } else if (ps_add_word(ear, line, phones, FALSE) < 0) {
      fclose(file);
      return fail("cannot add the word", line);
    }
  }
  fclose(file);
  return 0;
}

static int add_grammar(ps_decoder_t *ear, char *named) {
  char *path = strchr(named, '=');
  if (path == NULL) return fail("want NAME=FILE", named);
  *path++ = '\0';
  return ps_set_jsgf_file(ear, named, path) < 0 ? fail("cannot use the grammar", path) : 0;
}

static void print_path(ps_decoder_t *ear) {
  const char *comma = "";
  printf("[");
  for (ps_seg_t *part = ps_seg_iter(ear); part != NULL; part = ps_seg_next(part)) {
    int first, last;
    int32 acoustic, language, backoff;
    const char *word = ps_seg_word(part);
    ps_seg_frames(part, &first, &last);
    ps_seg_prob(part, &acoustic, &language, &backoff);
    if (word == NULL || word[0] == '(' || last < first) continue;
    printf("%s[\"%s\",%d,%d,%d]", comma, word, first, last, acoustic);
    comma = ",";
  }
  printf("]");
}

/** Takes the scores of the last sound from the file the library left. */
static int take_scores(Way *way) {
  char path[FOLDER_LENGTH + 32];
  snprintf(path, sizeof path, "%s/%09u.sen", way->folder, heard);
  FILE *file = fopen(path, "rb");
  if (file == NULL) return fail("the library left no scores in", path);
  fseek(file, 0, SEEK_END);
  way->size = (size_t)ftell(file);
  rewind(file);
  way->scores = realloc(way->scores, way->size);
  size_t read = way->scores == NULL ? 0 : fread(way->scores, 1, way->size, file);
  fclose(file);
  remove(path);
  return way->size > 0 && read == way->size ? 0 : fail("cannot read", path);
}

static int hear(const char *count) {
  size_t samples = strtoul(count, NULL, 10);
  if (samples > MOST_SAMPLES || fread(sound, sizeof sound[0], samples, stdin) != samples)
    return fail("bad number of samples", count);
  for (int i = 0; i < WAYS; i++) {
    ps_start_stream(ways[i].loop);
    ps_start_utt(ways[i].loop);
    ps_process_raw(ways[i].loop, sound, samples, FALSE, TRUE);
    ps_end_utt(ways[i].loop);
    if (take_scores(&ways[i]) != 0) return 1;
  }
  heard++;
  printf("{\"frames\":%d,\"loops\":[", ps_get_n_frames(ways[0].loop));
  for (int i = 0; i < WAYS; i++) {
    if (i > 0) printf(",");
    print_path(ways[i].loop);
  }
  printf("]}\n");
  return 0;
}

/** The last sound with the grammar called `name`. */
static int search(ps_decoder_t *ear, const Way *way, const char *name) {
  if (way->size == 0 || ps_set_search(ear, name) < 0) return fail("no sound, or no such grammar", name);
  FILE *scores = fmemopen(way->scores, way->size, "rb");
  if (scores == NULL) return fail("cannot go over the scores with", name);
  int frames = ps_decode_senscr(ear, scores);
  fclose(scores);
  if (frames < 0) return fail("cannot search with", name);
  print_path(ear);
  printf("\n");
  return 0;
}

static int search_once(ps_decoder_t *ear, const Way *way, const char *count) {
  static char grammar[MOST_GRAMMAR + 1];
  size_t length = strtoul(count, NULL, 10);
  if (length > MOST_GRAMMAR || fread(grammar, 1, length, stdin) != length) return fail("bad length of grammar", count);
  grammar[length] = '\0';
  if (ps_set_jsgf_string(ear, "once", grammar) < 0) return fail("cannot use the grammar", grammar);
  return search(ear, way, "once");
}

static int answer(ps_decoder_t *ear, char *line) {
  const char *what = strtok(line, " \n");
  const char *first = strtok(NULL, " \n");
  const char *second = strtok(NULL, " \n");
  if (what != NULL && first != NULL && strcmp(what, "hear") == 0) return hear(first);
  int way = first == NULL ? WAYS : atoi(first);
  if (second == NULL || way < 0 || way >= WAYS) return fail("no such request", what == NULL ? "" : what);
  if (strcmp(what, "with") == 0) return search(ear, &ways[way], second);
  if (strcmp(what, "once") == 0) return search_once(ear, &ways[way], second);
  return fail("no such request", what);
}

int main(int argc, char **argv) {
  char line[256];
  if (argc < 7) return fail("want MODEL DICTIONARY MORE_WORDS PHONE_MODEL FOLDER NAME=GRAMMAR", "too few arguments");
  ps_decoder_t *ear = grammar_decoder(argv[1], argv[2]);
  if (ear == NULL) return fail("cannot start with the model", argv[1]);
  for (int i = 0; i < WAYS; i++) {
    snprintf(ways[i].folder, sizeof ways[i].folder, "%s-%d", argv[5], i);
    if (open_way(&ways[i], argv[1], argv[4]) != 0) return fail("cannot start with the phones", argv[4]);
  }
  if (add_words(ear, argv[3]) != 0) return 1;
  for (int i = 6; i < argc; i++)
    if (add_grammar(ear, argv[i]) != 0) return 1;
  while (fgets(line, sizeof line, stdin) != NULL) {
    if (answer(ear, line) != 0) return 1;
    fflush(stdout);
  }
  return 0;
}
